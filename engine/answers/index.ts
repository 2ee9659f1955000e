/**
 * answers: what can be asked of scenarios, one folder for each kind of entry. `ask.ts` says what is asked, `work.ts` works it out with
 * what is scarce (`shop.ts`), `tell.ts` tells it: sentence, tables, drawing, slide, its part of a report. `kinds.ts` is the one list.
 */
export { type AnswersPage, type NotebookScenario, nameOf } from "./answersPage.ts";
export type { Asked, Want } from "./asked.ts";
export { climateOf } from "./climateOf.ts";
export { type Column, csvRowsOf, plain } from "./column.ts";
export { type DocNumber, docNumber, numbersOf } from "./docField.ts";
export { Id, Name, OfOne } from "./docShapes.ts";
export type { Found, ScenarioProblem } from "./found.ts";
export { type Headline, type Kind, kind, type Pass, type Tell, type Work } from "./kind.ts";
export {
  askRuler,
  type DocOf,
  EDITING_KIND,
  FIRST_KINDS,
  KIND_NAMES,
  KINDS,
  type KindName,
  kindOf,
  tellEnd,
} from "./kinds.ts";
export { makeShop, NEVER, type ShopKeeper, type ShopVisit, type ShopWorks } from "./makeShop.ts";
export { makeSurroundings, type WeatherText } from "./makeSurroundings.ts";
export {
  DEEPEST,
  LONGEST_NAME,
  LONGEST_NOTE,
  LONGEST_READ,
  LONGEST_TEXT,
  MOST_BYTES,
  MOST_CHANGES,
  MOST_ENTRIES,
  MOST_LOG_ROWS,
  MOST_READINGS,
  MOST_SCENARIOS,
  MOST_VALUES,
  MOST_WEATHER_FILES,
} from "./notebookLimits.ts";
export { Refused, valueOrRefused } from "./refused.ts";
export { columnsTable, foldedTable, list, missing, picture, saidWords, table } from "./reportParts.ts";
export type { Shop, Started } from "./shop.ts";
export type { SlideChart, SlideContent } from "./slide.ts";
export { NOT_YET, onRuler, SLIDE_CHARGE_PX, SLIDE_PX, SLIDE_ROOM, shortened, wide } from "./slideParts.ts";
export { placeOf, wantOf } from "./wantOf.ts";
