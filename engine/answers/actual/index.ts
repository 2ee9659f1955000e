/** answers/actual: a meter's log held against the plan: what it missed and why, and which figures to correct. What other folders may take of it. */
export { actualCsv } from "./actualCsv.ts";
export { actualDrawing } from "./actualDrawing.ts";
export type { ActualPicture } from "./actualPicture.ts";
export {
  actualInstant,
  actualSentence,
  coverWords,
  endWords,
  FIGURE_HEADS,
  figureRow,
  lackingWords,
  leadingMiss,
  openWords,
  partsOf,
  points,
  takeable,
} from "./actualWords.ts";
export { actualOf } from "./ask.ts";
export type { KeptLog } from "./doc.ts";
export { keptLog } from "./keptLog.ts";
export { actualKind } from "./kind.ts";
export { workLog } from "./work.ts";
