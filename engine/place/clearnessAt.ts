import { type BestWeights, bestWeights } from "./bestWeights.ts";
import { clamp, gridLacks, r1OfKt, sdOfKt } from "./clearnessLaws.ts";
import type { LatLon } from "./distanceKm.ts";
import type { Neighbour } from "./neighbours.ts";
import {
  type ErrorModel,
  KT_ERRORS,
  R1_ERRORS,
  SD_ERRORS,
  stationKt,
  stationR1Excess,
  stationSdExcess,
} from "./stationErrors.ts";

/** Clearness listens to stations so far away, and to so many at most, the nearest. */
const HEARD_KM = 1500;
const MOST_STATIONS = 24;
const MONTHS = Array.from({ length: 12 }, (_, month) => month);

/** Twelve monthly values each, January first, of `SiteClimate`. */
export interface ClearnessAt {
  readonly kt: readonly number[];
  readonly sd: readonly number[];
  readonly r1: readonly number[];
  /** Months too dark to have a clearness, which borrowed the nearest month's. */
  readonly borrowed: readonly number[];
  /** Standard deviation of the error of kt that the errors of grid and stations leave. */
  readonly error: number;
}

/**
 * Clearness of a place: the grid's, with its known error by season taken off, and the spread and correlation that go with it by law, each
 * corrected by what the stations near by have over the same where they stand, weighed by their errors.
 * @param gridKt from `gridAt` at the place
 */
export function clearnessAt(
  place: LatLon,
  gridKt: readonly (number | null)[],
  near: readonly Neighbour[],
): ClearnessAt {
  const heard = near.filter((one) => one.distanceKm < HEARD_KM).slice(0, MOST_STATIONS);
  const over = corrections(place, heard);
  const monthly = MONTHS.map((month) => {
    const from = gridKt[month]!;
    if (from === null) return null;
    const more = over(KT_ERRORS, ({ station, grid }) => {
      const value = stationKt(station, month);
      const there = grid.kt[month]!;
      return value === null || there === null ? null : value - there - gridLacks(station.lat, month);
    });
    return clamp(from + gridLacks(place.lat, month) + more, 0.05, 0.85);
  });
  const { values: kt, borrowed } = borrow(monthly);
  const sd = kt.map((mean, month) => {
    const more = over(SD_ERRORS, ({ station }) => stationSdExcess(station, month));
    return clamp(sdOfKt(mean, place.lat, month) + more, 0.04, 0.3);
  });
  const r1 = kt.map((mean, month) => {
    const more = over(R1_ERRORS, ({ station }) => stationR1Excess(station, month));
    return clamp(r1OfKt(mean) + more, 0.08, 0.6);
  });
  const { error } = bestWeights(
    place,
    heard.map(({ station }) => station),
    KT_ERRORS,
  );
  return { kt, sd, r1, borrowed, error };
}

/** What the place is expected to have over the background, by the stations that have a value; weights are worked out once for the same stations. */
function corrections(place: LatLon, heard: readonly Neighbour[]) {
  const known = new Map<ErrorModel, Map<string, BestWeights>>();
  return (model: ErrorModel, excessOf: (one: Neighbour) => number | null): number => {
    const excess = heard.map(excessOf);
    const key = excess.map((value) => (value === null ? 0 : 1)).join("");
    const ofModel = known.get(model) ?? new Map<string, BestWeights>();
    known.set(model, ofModel);
    const used = heard.filter((_, k) => excess[k] !== null).map(({ station }) => station);
    const best = ofModel.get(key) ?? bestWeights(place, used, model);
    ofModel.set(key, best);
    const values = excess.filter((value) => value !== null);
    return values.reduce((sum, value, k) => sum + best.weight[k]! * value, 0);
  };
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
