/**
 * place: what is known about a spot on the globe before anybody looks at the sky.
 * latitude and longitude ─► loadClimateNear (the tiles of our tables that count there) ─► climateAt, or readWeatherFile (a file the user has).
 */
export { r1OfKt, sdOfKt } from "./clearnessLaws.ts";
export { climateAt, type SiteClimate } from "./climateAt.ts";
export type { ClimateTables } from "./climateTables.ts";
export { distanceKm } from "./distanceKm.ts";
export { CLIMATE_WORLD, loadClimateNear, loadClimateTables } from "./loadClimateTables.ts";
export { readWeatherFile } from "./readWeatherFile.ts";
export { recordColdC } from "./recordColdC.ts";
export type { WeatherFile } from "./weatherFile.ts";
