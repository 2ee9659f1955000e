/** answers/run: one run, step by step: charge, what comes in, what the loads get. What other folders may take of it. */
export { askRun, askWhy, runOf } from "./ask.ts";
export { chargeLayer, notesLayer } from "./chargeLayer.ts";
export { type ChargeNotesOf, chargeNotes } from "./chargeNotes.ts";
export { hourHeads, hourRows } from "./hourRows.ts";
export { runKind } from "./kind.ts";
export { powerLayer } from "./powerLayer.ts";
export { type Reading, readingAt } from "./readingAt.ts";
export { reserveNamePlace } from "./reserveNamePlace.ts";
export { runAnswer } from "./runAnswer.ts";
export { stepsCsv } from "./runCsv.ts";
export { runDrawing } from "./runDrawing.ts";
export { runOnRuler } from "./runOnRuler.ts";
export { type DayRow, type RunPicture, runPicture } from "./runPicture.ts";
export { type StrataLayout, strataLayout } from "./strataLayout.ts";
export { type RunChoices, workPicture, workTrace } from "./work.ts";
