import { EngineFault } from "../fault.ts";
import { toGrid } from "../grid.ts";
import { requireRange } from "../require.ts";
import type { Problem } from "../scenario/problem.ts";
import type { ClimateStation, ClimateTables } from "./climateTables.ts";
import { HEARD_WITHIN_KM, tilesFor } from "./climateTiles.ts";
import { distanceKm } from "./distanceKm.ts";
import { type GridClimate, gridAt } from "./gridAt.ts";

/** A station that had a say, nearest first. */
export interface NearStation {
  readonly name: string;
  readonly country: string;
  readonly distanceKm: number;
  /** Key of the world's `stationLicences`. */
  readonly source: string;
  readonly years: number;
}

/** Where a place's climate comes from and how far to trust it. */
export interface ClimateProvenance {
  readonly method: "stations and grid" | "grid";
  readonly nearestStations: readonly NearStation[];
  /** How much of the grid's local error the stations near by can take away, 0…1. */
  readonly stationShare: number;
  /** Typical error (rms) of a month's mean clearness, measured at stations that were left out, or at reference sites. */
  readonly ktRms: number;
  /** Months (0 = January) too dark to have a clearness, which borrowed the nearest month's. */
  readonly borrowedMonths: readonly number[];
  readonly licences: readonly string[];
  /** For the screen: which source the place got, how sure it is, what is known to be wrong there. */
  readonly sentence: string;
}

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
const REACH_KM = 500;
/** How much the grid counts beside the stations: found by leaving out each station in turn (rms of kt 0.036). */
const GRID_WEIGHT = 0.3;
/** Mean of all stations; the world grid has no wind. */
const MEAN_WIND_MS = 4;
const MONTHS = Array.from({ length: 12 }, (_, month) => month);

/**
 * The climate of a place: the world grid, corrected by what the stations within some 500 km have over the grid where they
 * stand, `grid + Σ w (station − grid at station) / (Σ w + 0.3)` with `w = exp(−(distance / 500 km)²)`. Clearness,
 * temperature, spread and day-to-day correlation all go by the same rule; for the last two a fit on the clearness stands in
 * for the grid. Leaving out each of the 160 stations in turn, rms: kt 0.036 (grid alone 0.045), sd 0.022 (fit alone
 * 0.027), r1 0.050 at long records (fit alone 0.074), daily maximum and minimum 1.9 °C (grid alone 2.0 and 2.3).
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

  const ktOrNull = MONTHS.map((month) => {
    const from = grid.kt[month]!;
    if (from === null) return null;
    return clamp(
      corrected(from, (s) => minus(s.station.kt[month]!, s.grid.kt[month]!)),
      0.05,
      0.85,
    );
  });
  const { values: kt, borrowed } = borrow(ktOrNull);
  const sd = kt.map((mean, month) => {
    const excess = (s: Neighbour) =>
      minus(
        s.station.sd[month]!,
        fitted(s.station.kt[month]!, (k) => sdOfKt(k, s.station.lat)),
      );
    return clamp(corrected(sdOfKt(mean, latitudeDeg), excess), 0.05, 0.22);
  });
  const r1 = kt.map((mean, month) => {
    const excess = (s: Neighbour) => minus(r1OfStation(s.station, month), fitted(s.station.kt[month]!, r1OfKt));
    return clamp(corrected(r1OfKt(mean), excess), 0.1, 0.6);
  });
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
  const provenance = provenanceOf(tables, near, latitudeDeg, borrowed);
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

/** A station with its distance, its weight, and what the grid says where it stands. */
interface Neighbour {
  readonly station: ClimateStation;
  readonly distanceKm: number;
  readonly weight: number;
  readonly grid: GridClimate;
}

function stationsNear(tables: ClimateTables, latitudeDeg: number, longitudeDeg: number): Neighbour[] {
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

/** Spread of daily clearness by its mean: least squares over about 1,500 station-months, residual 0.028. */
export function sdOfKt(kt: number, latitudeDeg: number): number {
  return clamp(-0.132 + 1.163 * kt - 1.25 * kt * kt + (0.038 * Math.abs(latitudeDeg)) / 90, 0.05, 0.22);
}

/** Correlation from day to day by the mean: least squares over 648 station-months of long records, residual 0.087. */
export function r1OfKt(kt: number): number {
  return clamp(0.085 + 0.56 * kt, 0.1, 0.6);
}

/** One typical year makes a noisy correlation (± 0.13) and one 0.07 too low: most of it is shrunk to the mean of long records. */
function r1OfStation(station: ClimateStation, month: number): number | null {
  const r1 = station.r1[month]!;
  if (r1 === null || station.years >= 10) return r1;
  return clamp(0.35 + 0.3 * (r1 + 0.07 - 0.35), 0.1, 0.6);
}

/** Gives each month without a clearness that of the nearest month with one; there is next to no light to multiply. */
function borrow(monthly: (number | null)[]): { values: number[]; borrowed: number[] } {
  const borrowed: number[] = [];
  const values = monthly.map((value, month) => {
    if (value !== null) return value;
    borrowed.push(month);
    for (let away = 1; away <= 6; away++) {
      const sides = [monthly[(month + 12 - away) % 12]!, monthly[(month + away) % 12]!].filter((side) => side !== null);
      if (sides.length > 0) return sides.reduce((sum, side) => sum + side, 0) / sides.length;
    }
    return 0.4; // no month of any cell is without light all year
  });
  return { values, borrowed };
}

function provenanceOf(
  tables: ClimateTables,
  near: Neighbour[],
  latitudeDeg: number,
  borrowed: number[],
): ClimateProvenance {
  const weights = near.reduce((sum, neighbour) => sum + neighbour.weight, 0);
  const stationShare = weights / (weights + GRID_WEIGHT);
  const heard = near.filter((neighbour) => neighbour.weight > 0.02);
  // Measured: leave-one-out by how much the stations weigh; grid alone at 15 reference sites on other continents.
  const ktRms = stationShare >= 0.75 ? 0.035 : stationShare >= 0.5 ? 0.056 : 0.067;
  const licences = [...new Set(heard.map((neighbour) => tables.world.stationLicences[neighbour.station.src]!))];
  const first = heard[0];
  const count = heard.length === 1 ? "one station" : `${heard.length} stations`;
  const source = first
    ? `Climate from a world grid of 3° cells corrected by ${count}, the nearest ${first.station.name} at ${Math.round(first.distanceKm)} km`
    : "Climate from a world grid of 3° cells alone, with no station within 1000 km";
  const sure = `a month's mean clearness is good to about ±${ktRms.toFixed(3)} (sunlight ±${Math.round(ktRms * 200)} %)`;
  const errors = knownErrors(latitudeDeg, stationShare, borrowed);
  return {
    method: first ? "stations and grid" : "grid",
    nearestStations: heard.slice(0, 3).map(({ station, distanceKm: away }) => ({
      name: station.name,
      country: station.country,
      distanceKm: away,
      source: station.src,
      years: station.years,
    })),
    stationShare,
    ktRms,
    borrowedMonths: borrowed,
    licences: [...licences, ...tables.world.gridLicences],
    sentence: `${source}; ${[sure, ...errors].join("; ")}.`,
  };
}

/** What is known to be wrong with the grid in a region; stations near by take most of it away. */
function knownErrors(latitudeDeg: number, stationShare: number, borrowed: number[]): string[] {
  const errors: string[] = [];
  const away = Math.abs(latitudeDeg);
  if (stationShare < 0.5) {
    if (away <= 15) errors.push("the grid is some 5 to 10 % too bright in the humid tropics");
    if (away >= 25 && away <= 55)
      errors.push("the grid is some 10 % too dark in winter here, which errs on the safe side");
    if (latitudeDeg > 55) errors.push("the grid is some 10 % too bright in summer this far north, more beside sea ice");
  }
  errors.push("coasts, mountain valleys and fog are finer than the grid, so type in your own figures if you have them");
  if (borrowed.length > 0) errors.push("months with next to no daylight borrow the clearness of their neighbours");
  return errors;
}

function fitted(kt: number | null, curve: (kt: number) => number): number | null {
  return kt === null ? null : curve(kt);
}

function minus(value: number | null, other: number | null): number | null {
  return value === null || other === null ? null : value - other;
}

function clamp(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, value));
}
