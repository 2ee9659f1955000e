/**
 * place: what is known about a spot on the globe before anybody looks at the sky.
 * latitude and longitude ─► loadClimateNear (the tiles of our tables that count there) ─► climateAt, or readWeatherFile (a file the user has).
 */
export { climateAt, type SiteClimate } from "./climateAt.ts";
export type { ClimateProvenance, NearStation } from "./climateProvenance.ts";
export type { ClimateStation, ClimateTables } from "./climateTables.ts";
export { distanceKm, type LatLon } from "./distanceKm.ts";
export { CLIMATE_WORLD, loadClimateNear, loadClimateTables } from "./loadClimateTables.ts";
export { readWeatherFile } from "./readWeatherFile.ts";
export type { WeatherFile, WeatherReading } from "./weatherFile.ts";
