import type { ClimateStation } from "./climateTables.ts";
import { distanceKm, type LatLon } from "./distanceKm.ts";
import type { ErrorModel } from "./stationErrors.ts";

/** Errors that the stations of one source have in common are the same over some such distance. */
const SHARED_REACH_KM = 1500;

/** How much each station's difference counts at a place, and how far off what comes of it typically is. */
export interface BestWeights {
  readonly weight: readonly number[];
  /** Standard deviation; the background's own where no station counts. */
  readonly error: number;
}

/**
 * The weights that make the expected square error of `background + Σ weight (station − background at station)` least: a station
 * counts by its own error and by what it tells that its neighbours do not, and not by its distance alone.
 * @see L. S. Gandin, Objective Analysis of Meteorological Fields, 1963 (optimum interpolation); N. Cressie, Statistics for Spatial Data, 1993, ch. 3
 */
export function bestWeights(place: LatLon, stations: readonly ClimateStation[], model: ErrorModel): BestWeights {
  const { background, reachKm, station } = model;
  const variance = background * background;
  const like = (a: LatLon, b: LatLon) => variance * Math.exp(-distanceKm(a, b) / reachKm);
  const errors = stations.map(station);
  const covariance = stations.map((a, i) =>
    stations.map((b, j) => {
      const { own, shared } = errors[i]!;
      const together = a.src === b.src ? shared * errors[j]!.shared * Math.exp(-distanceKm(a, b) / SHARED_REACH_KM) : 0;
      return like(a, b) + together + (i === j ? own * own : 0);
    }),
  );
  const towards = stations.map((one) => like(place, one));
  const weight = solved(covariance, towards);
  const explained = weight.reduce((sum, w, k) => sum + w * towards[k]!, 0);
  return { weight, error: Math.sqrt(Math.max(0, variance - explained)) };
}

/** Cholesky's way to x of A x = b, for a positive definite A. */
function solved(a: readonly (readonly number[])[], b: readonly number[]): number[] {
  const lower: number[][] = [];
  const y: number[] = [];
  for (let i = 0; i < b.length; i++) {
    const row: number[] = [];
    for (let j = 0; j <= i; j++) {
      let sum = a[i]![j]!;
      for (let k = 0; k < j; k++) sum -= row[k]! * (j === i ? row[k]! : lower[j]![k]!);
      row.push(j === i ? Math.sqrt(sum) : sum / lower[j]![j]!);
    }
    lower.push(row);
    y.push(row.slice(0, i).reduce((rest, l, k) => rest - l * y[k]!, b[i]!) / row[i]!);
  }
  const x = y.slice();
  for (let i = b.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < b.length; k++) x[i]! -= lower[k]![i]! * x[k]!;
    x[i]! /= lower[i]![i]!;
  }
  return x;
}
