/**
 * forecast: the forecast on the page, with its bands in figures.
 */
export { forecastEntry } from "./entry.ts";
