import type { ClimateStation, ClimateTables } from "./climateTables.ts";
import { HEARD_WITHIN_KM } from "./climateTiles.ts";
import { distanceKm } from "./distanceKm.ts";
import { type GridClimate, gridAt } from "./gridAt.ts";

/** How far a station is heard for temperature and wind. */
const REACH_KM = 500;

/** A station with its distance, its weight, and what the grid says where it stands. */
export interface Neighbour {
  readonly station: ClimateStation;
  readonly distanceKm: number;
  readonly weight: number;
  readonly grid: GridClimate;
}

/** The stations that have a say at a place, nearest first. */
export function stationsNear(tables: ClimateTables, latitudeDeg: number, longitudeDeg: number): Neighbour[] {
  return tables.stations
    .map((station) => ({ station, distanceKm: distanceKm({ lat: latitudeDeg, lon: longitudeDeg }, station) }))
    .filter((near) => near.distanceKm < HEARD_WITHIN_KM)
    .sort((a, b) => a.distanceKm - b.distanceKm)
    .map((near) => ({
      ...near,
      weight: Math.exp(-((near.distanceKm / REACH_KM) ** 2)),
      grid: gridAt(tables, near.station.lat, near.station.lon, near.station.elev),
    }));
}
