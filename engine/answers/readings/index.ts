/** answers/readings: what was read off the station, and the forecast that learns from it. What other folders may take of it. */
export { learnedOf } from "./ask.ts";
export { readingsKind } from "./kind.ts";
export { learnedDrawing } from "./learnedDrawing.ts";
export { chargeAxis, chargeLayout } from "./learnedLayout.ts";
export { type LearnedPicture, type Lesson, learnedPicture } from "./learnedPicture.ts";
export { LEARNED_COLUMNS, LEARNED_HEADS, learnedCsv, learnedRows } from "./learnedRows.ts";
export {
  LESSON_HEADS,
  learnedInstant,
  learnedMore,
  learnedSentence,
  lessonRows,
  lessonWords,
  roughWords,
} from "./learnedWords.ts";
export { type EventTime, localTime, suggestedTime, timeWords, whyNoTime } from "./localTime.ts";
export { workLesson } from "./work.ts";
