/** answers/versus: two to four scenarios under the same skies and operators. What other folders may take of it. */
export { askVersus, FEWEST_COLUMNS, MOST_COLUMNS, pairsOf, VersusDoc, versusOf } from "./ask.ts";
export { differsLines } from "./differsWords.ts";
export { gainsWords } from "./gainsWords.ts";
export { versusKind } from "./kind.ts";
export { pairedDrawing } from "./pairedDrawing.ts";
export { putByOf } from "./pairedLayout.ts";
export { type PlanColumn, planColumns } from "./planColumns.ts";
export { type DecisionRow, decisionTable, shortOdds } from "./rows.ts";
export { TABLE_FOOT } from "./tableFoot.ts";
export { tallyDrawing, tallyKey } from "./tallyDrawing.ts";
export { versusCsv } from "./versusCsv.ts";
export type { Side, VersusPicture } from "./versusPicture.ts";
export { versusSentence } from "./versusWords.ts";
