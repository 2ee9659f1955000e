/**
 * fields: what a scenario's fields are called, how their values are shown, and how a change of one reads.
 */
export { changesInWords } from "./changesInWords.ts";
export { fieldLabel, withLabels } from "./fieldWords.ts";
export { itemInWords } from "./itemInWords.ts";
export { shownValue } from "./shownValue.ts";
