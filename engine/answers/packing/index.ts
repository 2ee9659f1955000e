/** answers/packing: what to take along: which sets of what the club has reach a target. What other folders may take of it. */
export { type PackingChoices, PackingDoc, packingOf } from "./ask.ts";
export { packingKind } from "./kind.ts";
export { listMarkup } from "./listMarkup.ts";
export { packingDrawing } from "./packingDrawing.ts";
export type { PackingPicture } from "./packingPicture.ts";
export {
  listSum,
  PACK_ORDER_WORDS,
  packingNotes,
  packingSentence,
  pieces,
  setWords,
  totalFigure,
  totalHead,
  totalWords,
} from "./packingWords.ts";
export { frontierColumns, frontierRows, LIST_COLUMNS, packingCsv } from "./rows.ts";
