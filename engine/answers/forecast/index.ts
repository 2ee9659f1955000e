/** answers/forecast: will it hold: charge in bands over many skies. What other folders may take of it. */
export { askOdds, oddsOf } from "./ask.ts";
export { forecastDrawing } from "./forecastDrawing.ts";
export type { Series } from "./forecastLayout.ts";
export { forecastHeads, forecastRows } from "./forecastRows.ts";
export { forecastSeries } from "./forecastSeries.ts";
export { failsWords, forecastInstant, forecastMore, forecastSentence } from "./forecastWords.ts";
export { forecastKind } from "./kind.ts";
export type { OddsPicture } from "./oddsPicture.ts";
export { type CountedMembers, workMembers, workNone } from "./work.ts";
