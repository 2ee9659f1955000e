import { nextNormal, openStream } from "../chance/stream.ts";
import type { Sureness, SurenessWord } from "../scenario/chanceFields.ts";

/**
 * What a word of sureness means: standard deviation of the figure, as a share of it (start charge and canopy: of full).
 * Common practice, no source, except for the pointers given: a shunt or a meter on site is good to a few percent; data sheets of
 * gear miss by a tenth; typical module tolerance and dirt make 5 % of yield; crowns of one kind of tree differ by a half.
 */
export const SURENESS_SPREAD: Record<keyof Sureness, Record<SurenessWord, number>> = {
  idleDraw: { measured: 0.03, dataSheet: 0.1, guess: 0.25 },
  startCharge: { measured: 0.01, dataSheet: 0.03, guess: 0.08 },
  bankHealth: { measured: 0.02, dataSheet: 0.05, guess: 0.12 },
  canopy: { measured: 0.15, dataSheet: 0.3, guess: 0.5 },
  panelYield: { measured: 0.02, dataSheet: 0.05, guess: 0.1 },
};

/** Where a member's own figures stand in `MemberInputs.figures`. */
export const FIGURE_START_SHARE = 0;
/** Capacity of this member's bank over the planned one. */
export const FIGURE_CAPACITY_SHARE = 1;
/** Yield of this member's panels over the planned one. */
export const FIGURE_YIELD_SHARE = 2;
/** Draw between transmissions over the planned one. */
export const FIGURE_IDLE_SHARE = 3;
/** How much denser or lighter the crowns are, in standard deviations. */
export const FIGURE_CANOPY_NORMAL = 4;
export const FIGURES = 5;

/** Between how many standard deviations of canopy panels are prepared; members in between are mixed. */
export const CANOPY_REACH = 2;

/**
 * Where a member's crowns stand: −1 (the darkest that panels are prepared for) … 0 (as planned) … 1 (the lightest).
 * @memberLoop
 */
export function crownLean(figures: Float64Array): number {
  return Math.max(-1, Math.min(1, figures[FIGURE_CANOPY_NORMAL]! / CANOPY_REACH));
}

/** Nobody's bank holds twice what was planned: figures stay within three standard deviations. */
const FARTHEST = 3;

/**
 * Draws how far a member's figures are off. One normal draw for each figure, in a fixed order: a new one is appended.
 * @param spread standard deviations in the order of the places above
 * @param state four words of scratch
 * @param figures receives the member's figures
 * @memberLoop
 */
export function drawFigures(
  startShare: number,
  spread: Float64Array,
  state: Uint32Array,
  words: Int32Array,
  member: number,
  figures: Float64Array,
): void {
  openStream(state, words, member, "figures");
  const start = startShare + spread[FIGURE_START_SHARE]! * drawBounded(state);
  figures[FIGURE_START_SHARE] = Math.max(0, Math.min(1, start));
  figures[FIGURE_CAPACITY_SHARE] = Math.max(0.2, 1 + spread[FIGURE_CAPACITY_SHARE]! * drawBounded(state));
  figures[FIGURE_YIELD_SHARE] = Math.max(0.2, 1 + spread[FIGURE_YIELD_SHARE]! * drawBounded(state));
  figures[FIGURE_IDLE_SHARE] = Math.max(0.2, 1 + spread[FIGURE_IDLE_SHARE]! * drawBounded(state));
  figures[FIGURE_CANOPY_NORMAL] = drawBounded(state);
}

/** @memberLoop */
function drawBounded(state: Uint32Array): number {
  return Math.max(-FARTHEST, Math.min(FARTHEST, nextNormal(state)));
}

/** The spreads of a scenario's sureness, in the order of the places above; the canopy's stays in its own unit. */
export function figureSpread(sureness: Sureness): Float64Array {
  const spread = new Float64Array(FIGURES);
  spread[FIGURE_START_SHARE] = SURENESS_SPREAD.startCharge[sureness.startCharge];
  spread[FIGURE_CAPACITY_SHARE] = SURENESS_SPREAD.bankHealth[sureness.bankHealth];
  spread[FIGURE_YIELD_SHARE] = SURENESS_SPREAD.panelYield[sureness.panelYield];
  spread[FIGURE_IDLE_SHARE] = SURENESS_SPREAD.idleDraw[sureness.idleDraw];
  return spread;
}
