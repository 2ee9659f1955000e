import { nextNormal, openStream, wordsFor } from "../chance/stream.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { drawFigures, FIGURE_CANOPY_NORMAL, FIGURE_START_SHARE, FIGURES } from "../run/memberFigures.ts";
import { type SettledSky, settledSky } from "./settledSky.ts";

/** Where in a particle's row of `traits` stands what holds for the whole event, after the member's figures. */
export const TRAIT_KEENNESS = FIGURES;
/** How far the climate of the place is off, in standard deviations. */
export const TRAIT_CLIMATE = FIGURES + 1;
/** Charge at the step from which the particle goes on, share of full. */
export const TRAIT_CHARGE = FIGURES + 2;
export const TRAITS = FIGURES + 3;

/**
 * Particles that stand at one step of an event: each is a member with a past that is kept and a future still to be drawn.
 */
export interface Particles {
  readonly count: number;
  /** The step at which they stand, 0…steps. */
  readonly step: number;
  /** Words of the streams from which their futures are drawn. */
  readonly words: Int32Array;
  /** `TRAITS` numbers for each. */
  readonly traits: Float64Array;
  readonly settled: SettledSky;
  /** For each and each local day: normal value and clear-sky index of the sky, day of the weather file, keenness of the day. */
  readonly skyNormal: Float64Array;
  readonly skyIndex: Float64Array;
  readonly fileDay: Int32Array;
  readonly dayKeenness: Float64Array;
  /** Clear-sky index of each step of the passing day. */
  readonly passing: Float64Array;
  /** Member of the ensemble that each goes back to; its air is kept. */
  readonly founder: Int32Array;
  /** Current of the last step, A, and 1 while the disconnect is closed. */
  readonly lastA: Float64Array;
  readonly connected: Float64Array;
  /** For each and each source: 1 while it runs, and litres of fuel left. */
  readonly running: Float64Array;
  readonly fuelL: Float64Array;
}

/**
 * The members of an ensemble as particles at its first step.
 * @param widened how many times their spreads the figures may be off; 1 gives the ensemble's own members
 */
export function firstParticles(ensemble: PreparedEnsemble, count: number, widened = 1): Particles {
  const { prepared, operators, words, spread } = ensemble;
  const { sources, grid, scenario } = prepared;
  const days = grid.dates.length;
  const traits = new Float64Array(count * TRAITS);
  const figures = new Float64Array(FIGURES);
  const { state } = operators;
  const wide = spread.map((sd) => widened * sd);
  for (let p = 0; p < count; p++) {
    const row = p * TRAITS;
    drawFigures(scenario.bank.startShare, wide, state, words, p, figures);
    traits.set(figures, row);
    traits[row + FIGURE_CANOPY_NORMAL]! *= widened;
    openStream(state, words, p, "activity");
    traits[row + TRAIT_KEENNESS] = widened * nextNormal(state);
    openStream(state, words, p, "climate");
    traits[row + TRAIT_CLIMATE] = widened * nextNormal(state);
    traits[row + TRAIT_CHARGE] = figures[FIGURE_START_SHARE]!;
  }
  return {
    count,
    step: 0,
    words,
    traits,
    settled: settledSky(prepared, 0),
    skyNormal: new Float64Array(count * days),
    skyIndex: new Float64Array(count * days),
    fileDay: new Int32Array(count * days),
    dayKeenness: new Float64Array(count * days),
    passing: new Float64Array(0),
    founder: Int32Array.from({ length: count }, (_, p) => p),
    lastA: new Float64Array(count),
    connected: new Float64Array(count).fill(1),
    running: new Float64Array(count * sources.length),
    fuelL: Float64Array.from({ length: count * sources.length }, (_, k) => sources[k % sources.length]!.fuelL),
  };
}

/** Words of the streams of a generation of particles: none of them meets another's, or the ensemble's. */
export function generationWords(ensemble: PreparedEnsemble, generation: number): Int32Array {
  return wordsFor(ensemble.words, `generation ${generation}`);
}
