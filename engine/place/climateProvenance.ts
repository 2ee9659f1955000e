import { toGrid } from "../grid.ts";
import type { ClimateTables } from "./climateTables.ts";
import type { Neighbour } from "./neighbours.ts";
import { KT_ERRORS } from "./stationErrors.ts";

/** No climate from tables is surer than this; where no station is near it is as sure as the grid was found to be. */
const SUREST_KT = 0.025;
const FAR_KT = 0.055;
/** Under this share of the grid's error taken away, what is known to be wrong with the grid is said. */
const FEW_STATIONS = 0.3;

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
  /** How much of the variance of the grid's local error the stations near by take away, 0…1. */
  readonly stationShare: number;
  /** Typical error (rms) of a month's mean clearness, as found at measured records with all near them left out. */
  readonly ktRms: number;
  /** Months (0 = January) too dark to have a clearness, which borrowed the nearest month's. */
  readonly borrowedMonths: readonly number[];
  readonly licences: readonly string[];
  /** For the screen: which source the place got, how sure it is, what is known to be wrong there. */
  readonly sentence: string;
}

/** @param error of a month's mean clearness as the weights of the stations have it, Kt */
export function climateProvenance(
  tables: ClimateTables,
  near: readonly Neighbour[],
  latitudeDeg: number,
  borrowed: readonly number[],
  error: number,
): ClimateProvenance {
  const stationShare = 1 - (error / KT_ERRORS.background) ** 2;
  const heard = near.filter((neighbour) => neighbour.weight > 0.02);
  const ktRms = toGrid(Math.max(SUREST_KT, FAR_KT * (1 - stationShare)));
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

/** What is known to be wrong in a region, as measured records there have it; stations near by take most of it away. */
function knownErrors(latitudeDeg: number, stationShare: number, borrowed: readonly number[]): string[] {
  const errors: string[] = [];
  const away = Math.abs(latitudeDeg);
  if (stationShare < FEW_STATIONS) {
    if (away <= 25)
      errors.push("in the tropics the grid is some 10 % too bright in wet months and some 10 % too dull in dry ones");
    if (away > 25 && away <= 45)
      errors.push("where winters are dry the grid is some 10 % too dull then, which errs on the safe side");
    if (away > 45 && away <= 58)
      errors.push("over snow the grid is some 15 % too dull in midwinter, which errs on the safe side");
    if (latitudeDeg > 58)
      errors.push("the grid is some 5 to 10 % too bright in summer this far north, more beside sea ice");
  } else if (away >= 38 && away <= 50) {
    errors.push("in the lee of lakes that make winter cloud the stations are too bright, by up to 20 % in December");
  }
  errors.push("coasts, mountain valleys and fog are finer than the grid, so type in your own figures if you have them");
  if (borrowed.length > 0) errors.push("months with next to no daylight borrow the clearness of their neighbours");
  return errors;
}
