/**
 * place: what is known about a spot on the globe before anybody looks at the sky.
 * latitude and longitude ─► climateAt (tables that ship with the project) or readWeatherFile (a file the user has).
 */
export { type ClimateProvenance, climateAt, type NearStation, type SiteClimate } from "./climateAt.ts";
export { type ClimateStation, type ClimateTables, readClimateTables } from "./climateTables.ts";
export { distanceKm, type LatLon } from "./distanceKm.ts";
export { loadClimateTables } from "./loadClimateTables.ts";
export { readWeatherFile } from "./readWeatherFile.ts";
export type { WeatherFile, WeatherReading } from "./weatherFile.ts";
