import { normalQuantile } from "../chance/normalQuantile.ts";
import { toGrid } from "../grid.ts";
import type { PreparedStation } from "../load/prepareStation.ts";
import { keennessAt } from "./keenness.ts";

/** Points at which means are taken when a share is brought back to its plan. */
const POINTS = 400;
/** A share near the whole of the clock cannot keep both its mean and a spread: the cap then has the last word. */
const MOST = 1000;
const ROUNDS = 200;
const CLOSE_SHARE = 1e-5;

/**
 * Sending while staffed, one value per station and step, raised by what the caps would take from its mean: nobody sends for more than
 * the whole clock, and those behind one interlock not for more than that together.
 * @param groupOfStation interlock group of each station
 * @param commonWeight weight of what all stations share in the normal value; @param ownWeight of each one's own
 * @param keenness from `keennessTable`
 */
export function raisedShares(
  stations: readonly PreparedStation[],
  groupOfStation: Int32Array,
  commonWeight: number,
  ownWeight: number,
  keenness: Float64Array,
): Float64Array[] {
  const raised = stations.map(({ sendingShare }) => new Float64Array(sendingShare.length));
  const known = new Map<string, number[]>();
  const factors = new Map<number, Float64Array[]>();
  const factorsFor = (count: number) => {
    const found = factors.get(count) ?? pointFactors(count, commonWeight, ownWeight, keenness);
    factors.set(count, found);
    return found;
  };
  const steps = stations[0]?.sendingShare.length ?? 0;
  for (const group of new Set(groupOfStation)) {
    const all = stations.map((_, s) => s).filter((s) => groupOfStation[s] === group);
    for (let i = 0; i < steps; i++) {
      const sends = all.filter((s) => stations[s]!.sendingShare[i]! > 0);
      const planned = sends.map((s) => stations[s]!.sendingShare[i]!);
      const staffed = sends.map((s) => stations[s]!.staffedShare[i]!);
      const key = `${planned} ${staffed}`;
      const found = known.get(key) ?? raisedTogether(planned, staffed, factorsFor(sends.length));
      known.set(key, found);
      sends.forEach((s, k) => {
        raised[s]![i] = found[k]!;
      });
    }
  }
  return raised;
}

/** Raises the shares of one interlock group in one step until the mean of each is its plan. */
function raisedTogether(
  planned: readonly number[],
  staffed: readonly number[],
  factors: readonly Float64Array[],
): number[] {
  const raised = planned.map((share, s) => share / staffed[s]!);
  const sends = new Float64Array(planned.length);
  for (let round = 0; round < ROUNDS; round++) {
    const mean = planned.map(() => 0);
    for (let k = 0; k < POINTS; k++) {
      let all = 0;
      for (let s = 0; s < sends.length; s++) {
        sends[s] = staffed[s]! * Math.min(1, raised[s]! * factors[s]![k]!);
        all += sends[s]!;
      }
      const waiting = Math.max(1, all);
      for (let s = 0; s < sends.length; s++) mean[s]! += sends[s]! / waiting / POINTS;
    }
    let far = 0;
    raised.forEach((share, s) => {
      far = Math.max(far, Math.abs(mean[s]! - planned[s]!));
      // The square goes faster where the caps answer weakly, and does not overshoot elsewhere by more than the next round corrects.
      const by = planned[s]! / mean[s]!;
      raised[s] = Math.min(
        MOST,
        share * (mean[s]! < 0.95 * planned[s]! || staffed[s]! - mean[s]! < 0.2 ? by * by : by),
      );
    });
    if (far < CLOSE_SHARE) break;
  }
  return raised.map(toGrid);
}

/** Factors of each station at points spread evenly over all that may be drawn; each station's have the mean 1 that is theirs. */
function pointFactors(
  stations: number,
  commonWeight: number,
  ownWeight: number,
  keenness: Float64Array,
): Float64Array[] {
  const normals = evenPoints(stations === 1 ? 1 : stations + 1).map((direction) => direction.map(normalQuantile));
  const normalOf = (s: number, k: number) =>
    stations === 1
      ? Math.sqrt(commonWeight * commonWeight + ownWeight * ownWeight) * normals[0]![k]!
      : commonWeight * normals[0]![k]! + ownWeight * normals[s + 1]![k]!;
  return Array.from({ length: stations }, (_, s) => {
    const factors = Float64Array.from({ length: POINTS }, (_, k) => keennessAt(keenness, normalOf(s, k)));
    const mean = factors.reduce((sum, factor) => sum + factor, 0) / POINTS;
    return factors.map((factor) => factor / mean);
  });
}

/**
 * Points spread evenly over a cube, one list per direction.
 * @see M. Roberts, The unreasonable effectiveness of quasirandom sequences, 2018 (additive recurrence by generalised golden ratios)
 */
function evenPoints(directions: number): Float64Array[] {
  let ratio = 1.5;
  for (let round = 0; round < 60; round++) ratio = (1 + ratio) ** (1 / (directions + 1));
  return Array.from({ length: directions }, (_, j) => {
    const step = toGrid(ratio ** -(j + 1));
    return Float64Array.from({ length: POINTS }, (_, k) => {
      const place = directions === 1 ? (k + 0.5) / POINTS : 0.5 + (k + 1) * step;
      return Math.max(1e-6, Math.min(1 - 1e-6, place - Math.floor(place)));
    });
  });
}
