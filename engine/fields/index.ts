/**
 * fields: what a scenario's fields are called, how their values are shown, and how a change of one reads.
 */
export { changesInWords } from "./changesInWords.ts";
export { choiceLabel, fieldLabel, withLabels } from "./fieldWords.ts";
export { changeAdd, changeAway, changeTo, type Path, pattern, sameIn, valueAt } from "./formPath.ts";
export {
  formSchema,
  isPlainAt,
  isShare,
  kindsOf,
  numberPart,
  resolved,
  type SchemaNode,
  schemaAt,
} from "./formSchema.ts";
export { type FormGroup, formGroups, problemsIn } from "./groups.ts";
export { itemInWords } from "./itemInWords.ts";
export { counts, dayInWords, plainFigure, shownUnit, shownValue, toShown, toStored } from "./shownValue.ts";
