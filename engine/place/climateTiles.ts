import { wrapLongitudeDeg } from "../angle.ts";
import type { ClimateWorld } from "./climateTables.ts";
import { distanceKm } from "./distanceKm.ts";
import { cornersAt } from "./gridAt.ts";

/** Stations farther away have no say: their weight, exp(−(2000 km / 500 km)²), is 1e-7. */
export const HEARD_WITHIN_KM = 2000;
/** Whatever rounding a longitude has been through, no station that is heard may be missed. */
const SLACK_KM = 1;

/** The tiles that the climate of a place depends on: of the cells round it, and of those round each station that is heard there. */
export function tilesFor(world: ClimateWorld, latitudeDeg: number, longitudeDeg: number): Set<number> {
  const here = { lat: latitudeDeg, lon: wrapLongitudeDeg(longitudeDeg) };
  const heard = world.stationPlaces.filter(([lat, lon]) => distanceKm(here, { lat, lon }) < HEARD_WITHIN_KM + SLACK_KM);
  const places = [[here.lat, here.lon] as const, ...heard];
  return new Set(places.flatMap(([lat, lon]) => cornersAt(world, lat, lon).map(({ tile }) => tile)));
}

/** The tile that keeps each of the world's stations: that of the cell to its south-west. */
export function stationTiles(world: ClimateWorld): number[] {
  return world.stationPlaces.map(([lat, lon]) => cornersAt(world, lat, lon)[0]!.tile);
}
