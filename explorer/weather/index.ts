/**
 * weather: weather files of a notebook: kept, taken out as CSV, put in with one edit.
 */
export { keptWeather } from "./keptWeather.ts";
export { weatherCsv } from "./weatherCsv.ts";
export { withWeather } from "./weatherEdits.ts";
