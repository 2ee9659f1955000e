import { CLIMATE_FILES } from "./climateFiles.ts";
import { type ClimateTables, type ClimateWorld, climateTables, type StoredTile } from "./climateTables.ts";
import { stationTiles, tilesFor } from "./climateTiles.ts";
import index from "./data/climate-index.json";
import type { LatLon } from "./distanceKm.ts";

/** The grid and its stations, before any tile is fetched. */
export const CLIMATE_WORLD = index as unknown as ClimateWorld;

const loaded = new Map<string, Promise<ClimateTables>>();

/**
 * Loads the climate of the whole world, which comes with the program: no network is asked. The second call gives the same tables.
 * @returns monthly means by grid cell and station, for `surroundings.climate`
 * @throws Error if the files of the tables are gone from where the program is installed
 * @see README.md, Licence and credits, for the open data that they are made from
 */
export function loadClimateTables(): Promise<ClimateTables> {
  return loadTiles(CLIMATE_FILES.map((_, number) => number));
}

/** Fetches as much as the climate of some places depends on. The same places are given the same tables. */
export function loadClimateNear(places: readonly LatLon[]): Promise<ClimateTables> {
  const numbers = new Set(places.flatMap(({ lat, lon }) => [...tilesFor(CLIMATE_WORLD, lat, lon)]));
  return loadTiles([...numbers].sort((a, b) => a - b));
}

function loadTiles(numbers: readonly number[]): Promise<ClimateTables> {
  const key = numbers.join();
  const known = loaded.get(key);
  if (known !== undefined) return known;
  const tables = fetchTiles(numbers);
  loaded.set(key, tables);
  tables.catch(() => loaded.delete(key)); // the next to ask tries again
  return tables;
}

async function fetchTiles(numbers: readonly number[]): Promise<ClimateTables> {
  const files = await Promise.all(numbers.map((number) => CLIMATE_FILES[number]!()));
  const stored = new Map(numbers.map((number, k) => [number, files[k]!.default as StoredTile]));
  return climateTables(CLIMATE_WORLD, stored, stationTiles(CLIMATE_WORLD));
}
