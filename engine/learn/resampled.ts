import { nextNormal, nextUnit, openStream, STREAM_WORDS } from "../chance/stream.ts";
import {
  FIGURE_CAPACITY_SHARE,
  FIGURE_IDLE_SHARE,
  FIGURE_START_SHARE,
  FIGURE_YIELD_SHARE,
} from "../run/memberFigures.ts";
import type { Prepared } from "../run/prepare.ts";
import { type Particles, TRAIT_CHARGE, TRAITS } from "./particles.ts";
import { systematicResample } from "./particleWeights.ts";
import { settledSky } from "./settledSky.ts";
import { shrinkAndJitter } from "./shrinkAndJitter.ts";
import type { Snapshots } from "./snapshots.ts";

/** Figures never fall below this share of plan; the draw's own bound. */
const LEAST_SHARE = 0.2;
/** Copies differ in charge by this share of the spread that is left, as they do in their other traits. */
const CHARGE_JITTER = 0.14;

/**
 * Thinned particles filled up again: copies in proportion to the weights, each with its own past, traits moved apart a little,
 * and a stream of its own for the future.
 * @param n which of the snapshots' steps they stand at
 * @param words streams of the new generation
 */
export function resampled(
  prepared: Prepared,
  particles: Particles,
  snapshots: Snapshots,
  n: number,
  weights: Float64Array,
  words: Int32Array,
): Particles {
  const { count } = particles;
  const step = snapshots.steps[n]!;
  const settled = settledSky(prepared, step);
  const state = new Uint32Array(STREAM_WORDS);
  openStream(state, words, count, "resample");
  const parents = systematicResample(weights, nextUnit(state));
  const steps = snapshots.steps.length;
  const sources = prepared.sources.length;
  const taken = <Rows extends Float64Array | Int32Array>(
    rows: Rows,
    width: number,
    stride = width,
    offset = 0,
  ): Rows => {
    const out = new (rows.constructor as new (length: number) => Rows)(count * width);
    for (let p = 0; p < count; p++) {
      const from = parents[p]! * stride + offset;
      for (let k = 0; k < width; k++) out[p * width + k] = rows[from + k]!;
    }
    return out;
  };
  const days = prepared.grid.dates.length;
  const traits = taken(particles.traits, TRAITS);
  const charge = taken(snapshots.chargeShare, 1, steps, n);
  moveApart(traits, words);
  moveCharge(charge, state, words);
  for (let p = 0; p < count; p++) traits[p * TRAITS + TRAIT_CHARGE] = charge[p]!;
  return {
    count,
    step,
    words,
    traits,
    settled,
    skyNormal: taken(snapshots.skyNormal, days),
    skyIndex: taken(snapshots.skyIndex, days),
    fileDay: taken(snapshots.fileDay, days),
    dayKeenness: taken(snapshots.dayKeenness, days),
    passing: taken(snapshots.sky, settled.passingSteps, snapshots.skySteps, settled.passingFrom - snapshots.skyFrom),
    founder: taken(particles.founder, 1),
    lastA: taken(snapshots.lastA, 1, steps, n),
    connected: taken(snapshots.connected, 1, steps, n),
    running: taken(snapshots.running, sources, steps * sources, n * sources),
    fuelL: taken(snapshots.fuelL, sources, steps * sources, n * sources),
  };
}

/** Moves apart what holds for the whole event. The charge at the start is past and stays. */
function moveApart(traits: Float64Array, words: Int32Array): void {
  const count = traits.length / TRAITS;
  const columns = Array.from({ length: TRAITS }, (_, c) => c).filter(
    (c) => c !== FIGURE_START_SHARE && c !== TRAIT_CHARGE,
  );
  const rows = new Float64Array(count * columns.length);
  for (let p = 0; p < count; p++) {
    columns.forEach((column, c) => {
      rows[p * columns.length + c] = traits[p * TRAITS + column]!;
    });
  }
  shrinkAndJitter(rows, columns.length, words);
  for (let p = 0; p < count; p++) {
    columns.forEach((column, c) => {
      const isShare = column === FIGURE_CAPACITY_SHARE || column === FIGURE_YIELD_SHARE || column === FIGURE_IDLE_SHARE;
      const moved = rows[p * columns.length + c]!;
      traits[p * TRAITS + column] = isShare ? Math.max(LEAST_SHARE, moved) : moved;
    });
  }
}

/** Moves charges apart; a bank that is full or empty is so in every copy. */
function moveCharge(charge: Float64Array, state: Uint32Array, words: Int32Array): void {
  const count = charge.length;
  const mean = charge.reduce((sum, share) => sum + share, 0) / count;
  const variance = charge.reduce((sum, share) => sum + (share - mean) * (share - mean), 0) / count;
  const spread = CHARGE_JITTER * Math.sqrt(variance);
  for (let p = 0; p < count; p++) {
    openStream(state, words, p, "start");
    const moved = charge[p]! + spread * nextNormal(state);
    if (charge[p]! > spread && charge[p]! < 1 - spread) charge[p] = Math.max(0, Math.min(1, moved));
  }
}
