import { EngineFault } from "../fault.ts";
import { toGrid } from "../grid.ts";
import { requireRange } from "../require.ts";
import type { Problem } from "../scenario/problem.ts";
import { clearnessAt } from "./clearnessAt.ts";
import { type ClimateProvenance, climateProvenance } from "./climateProvenance.ts";
import type { ClimateTables } from "./climateTables.ts";
import { tilesFor } from "./climateTiles.ts";
import { gridAt } from "./gridAt.ts";
import { type Neighbour, stationsNear } from "./neighbours.ts";

/** What is known of the climate of a place: twelve monthly values each, January first, and where they come from. */
export interface SiteClimate {
  /** Mean daily clearness, GHI over `dailyExtraterrestrialWhM2`. */
  readonly kt: readonly number[];
  /** Standard deviation of daily clearness within a month. */
  readonly sd: readonly number[];
  /** Correlation of a day's clearness with the day before's. */
  readonly r1: readonly number[];
  /** Mean daily maximum and minimum of the air, °C. */
  readonly tmaxC: readonly number[];
  readonly tminC: readonly number[];
  /** Mean wind at about 10 m in the open, m/s; near the ground there is less (common practice: half). */
  readonly windMs: readonly number[];
  readonly provenance: ClimateProvenance;
}

/** South of the grid's last row there are no data; the last row itself is good to half a cell. */
const SOUTHERNMOST_DEG = -58.5;
/** How much the grid counts beside the stations, for temperature and wind. */
const GRID_WEIGHT = 0.3;
/** Mean of all stations; the world grid has no wind. */
const MEAN_WIND_MS = 4;
const MONTHS = Array.from({ length: 12 }, (_, month) => month);

/**
 * The climate of a place: the world grid, corrected by what the stations near by have over the grid where they stand. For clearness,
 * its spread and its correlation each station counts by its own error against measured records (`bestWeights`); for spread and
 * correlation a law on the clearness stands in for the grid. Temperature and wind go by distance alone, `grid + Σ w (station −
 * grid at station) / (Σ w + 0.3)` with `w = exp(−(distance / 500 km)²)`. How good that is stands in docs/fits/climate.md.
 * @param latitudeDeg −90…90
 * @param longitudeDeg −180…180
 * @param elevationM −450…9000; null takes the ground of the grid, which knows no hills
 * @returns a problem instead of a climate south of 58.5° S, where there are no data
 * @throws RangeError if the place is off the globe; EngineFault if the tables were fetched for places elsewhere
 */
export function climateAt(
  tables: ClimateTables,
  latitudeDeg: number,
  longitudeDeg: number,
  elevationM: number | null,
): { ok: true; climate: SiteClimate } | { ok: false; problems: Problem[] } {
  requireRange({ latitudeDeg }, -90, 90);
  requireRange({ longitudeDeg }, -180, 180);
  if (elevationM !== null) requireRange({ elevationM }, -450, 9000);
  if (latitudeDeg < SOUTHERNMOST_DEG) {
    const message = `The latitude is ${latitudeDeg}°, and the climate tables end at 58.5° south; type in monthly clearness or load a weather file.`;
    return { ok: false, problems: [{ code: "no-climate-here", path: ["latitudeDeg"], message }] };
  }
  requireTiles(tables, latitudeDeg, longitudeDeg);
  const grid = gridAt(tables, latitudeDeg, longitudeDeg, elevationM);
  const near = stationsNear(tables, latitudeDeg, longitudeDeg);
  const corrected = (from: number, excess: (station: Neighbour) => number | null) => from + correction(near, excess);

  const place = { lat: latitudeDeg, lon: longitudeDeg };
  const { kt, sd, r1, borrowed, error } = clearnessAt(place, grid.kt, near);
  const tmaxC = grid.tmaxC.map((from, month) =>
    corrected(from, (s) => (s.station.elev === null ? null : minus(s.station.tmax[month]!, s.grid.tmaxC[month]!))),
  );
  const tminC = grid.tminC.map((from, month) =>
    Math.min(
      tmaxC[month]!,
      corrected(from, (s) => (s.station.elev === null ? null : minus(s.station.tmin[month]!, s.grid.tminC[month]!))),
    ),
  );
  const windMs = MONTHS.map((month) =>
    Math.max(
      0,
      corrected(MEAN_WIND_MS, (s) => minus(s.station.wind[month]!, MEAN_WIND_MS)),
    ),
  );
  const provenance = climateProvenance(tables, near, latitudeDeg, borrowed, error);
  return {
    ok: true,
    climate: {
      kt: kt.map(toGrid),
      sd: sd.map(toGrid),
      r1: r1.map(toGrid),
      tmaxC: tmaxC.map(toGrid),
      tminC: tminC.map(toGrid),
      windMs: windMs.map(toGrid),
      provenance,
    },
  };
}

/** Tables that lack a station would answer all the same, and otherwise. */
function requireTiles({ world, tiles }: ClimateTables, latitudeDeg: number, longitudeDeg: number): void {
  for (const tile of tilesFor(world, latitudeDeg, longitudeDeg)) {
    if (!tiles.has(tile)) {
      throw new EngineFault(
        `tile ${tile} of the climate tables is not here, and ${latitudeDeg}, ${longitudeDeg} needs it`,
      );
    }
  }
}

function correction(near: Neighbour[], excess: (station: Neighbour) => number | null): number {
  let sum = 0;
  let weights = 0;
  for (const neighbour of near) {
    const over = excess(neighbour);
    if (over === null) continue;
    sum += neighbour.weight * over;
    weights += neighbour.weight;
  }
  return sum / (weights + GRID_WEIGHT);
}

function minus(value: number | null, other: number | null): number | null {
  return value === null || other === null ? null : value - other;
}
