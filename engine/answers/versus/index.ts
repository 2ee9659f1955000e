/** answers/versus: two scenarios under the same skies and operators. What other folders may take of it. */
export { askVersus, versusOf } from "./ask.ts";
export { versusKind } from "./kind.ts";
export { oddsDrawing } from "./oddsDrawing.ts";
export { pairedDrawing } from "./pairedDrawing.ts";
export { VERSUS_COLUMNS, versusRows } from "./rows.ts";
export { tallyDrawing } from "./tallyDrawing.ts";
export { versusCsv } from "./versusCsv.ts";
export type { Side, VersusPicture } from "./versusPicture.ts";
export { burdenWords, versusSentence } from "./versusWords.ts";
