import { clearFixedPower, MEMBER_CROWNS, MEMBER_SLOTS, MEMBER_YIELD } from "../array/fixedPower.ts";
import { stepDome } from "../array/stepDome.ts";
import { stepPlane } from "../array/stepPlane.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import { crownLean, FIGURE_CAPACITY_SHARE, FIGURE_START_SHARE, FIGURE_YIELD_SHARE, FIGURES } from "./memberFigures.ts";
import type { MemberInputs } from "./memberInputs.ts";
import type { Prepared } from "./prepare.ts";
import type { RunDetails } from "./runDetails.ts";
import type { RunRows } from "./runRows.ts";
import { stepBank } from "./stepBank.ts";
import { CONNECTED, COUNTED_H, DROPOUT_H, LAST_A, STATE_SLOTS, STORED_AH } from "./stepState.ts";

/**
 * Carries one member through the whole event: in every step the sun is offered, sources that may run are offered, the loads
 * take what they want, and the bank takes or gives the rest within its limits. Solar goes first, sources fill up what is
 * left. What cannot be used is spilled and what cannot be had is unserved; both are counted.
 *
 * In every step: solar − spilled + sources + bank discharge = served + bank charge.
 * @param light the member's sky; one value per step
 * @param airTempC the member's air; one value per step
 * @param inputs the member's loads and figures
 * @param run where everything is written, in its first lane
 * @param details filled in when given (a single trace); ensembles leave it out
 */
export function stepRun(
  prepared: Prepared,
  light: SkyLight,
  airTempC: Float64Array,
  inputs: MemberInputs,
  run: RunRows,
  details?: RunDetails,
): void {
  stepLaneFigures(prepared, inputs.figures, run, 0);
  stepLaneWanted(inputs.wantedW, run, 0);
  stepLaneLight(prepared, light, airTempC, run, 0);
  stepLanes(prepared, run, 1, details);
}

/** Hands a lane its member's own figures, and how things stand before the first step. */
export function stepLaneFigures(prepared: Prepared, figures: Float64Array, run: RunRows, lane: number): void {
  const { state } = run;
  for (let f = 0; f < FIGURES; f++) run.figures[lane * FIGURES + f] = figures[f]!;
  const { ofMember } = run.fixed;
  ofMember[lane * MEMBER_SLOTS + MEMBER_YIELD] = figures[FIGURE_YIELD_SHARE]!;
  ofMember[lane * MEMBER_SLOTS + MEMBER_CROWNS] = crownLean(figures);
  const at = lane * STATE_SLOTS;
  state[at + STORED_AH] = prepared.bank.fullAh * figures[FIGURE_START_SHARE]!;
  state[at + COUNTED_H] = prepared.grid.stepH / figures[FIGURE_CAPACITY_SHARE]!;
  state[at + LAST_A] = 0;
  state[at + DROPOUT_H] = 0;
  state[at + CONNECTED] = 1;
  const sources = prepared.sources.length;
  for (let s = 0; s < sources; s++) {
    run.runs[lane * sources + s] = 0;
    run.fuelLeftL[lane * sources + s] = prepared.sources[s]!.fuelL;
  }
}

/** Hands a lane what its member's gear wants. */
export function stepLaneWanted(wantedW: Float64Array, run: RunRows, lane: number): void {
  run.wantedW.set(wantedW, lane * wantedW.length);
}

/** Hands a lane its member's sky, sorted by the dome. */
export function stepLaneLight(
  prepared: Prepared,
  light: SkyLight,
  airTempC: Float64Array,
  run: RunRows,
  lane: number,
): void {
  // All groups have the one dome of their scenario.
  if (prepared.groups.length > 0)
    stepDome(prepared.groups[0]!.dome, light, airTempC, run.light, lane * airTempC.length);
}

/**
 * Carries the members of the first lanes through the event; each has been handed its figures, loads and light.
 * @param lanes 1…`run.lanes`
 */
export function stepLanes(prepared: Prepared, run: RunRows, lanes: number, details?: RunDetails): void {
  stepPanels(prepared, run, lanes, details);
  stepPower(prepared, run, lanes, 0, details);
}

/**
 * The second half of `stepLanes`, for which `stepPanels` has been through: from step `first` to the last.
 * @param first 0…steps; `run.state`, `run.runs` and `run.fuelLeftL` say how things stand there
 */
export function stepPower(prepared: Prepared, run: RunRows, lanes: number, first: number, details?: RunDetails): void {
  stepBank(prepared, run, lanes, first, isNoted(prepared, details), details);
}

/** Whether every step of every group is written down: traces, and runs in which one input shuts out another. */
function isNoted(prepared: Prepared, details: RunDetails | undefined): boolean {
  return details !== undefined || prepared.selector.inputs > 0;
}

/** What the sky makes of all panels, for all steps at once: the first half of `stepLanes`. */
export function stepPanels(prepared: Prepared, run: RunRows, lanes: number, details?: RunDetails): void {
  const { groups } = prepared;
  const noteAll = isNoted(prepared, details);
  clearFixedPower(run.fixed);
  if (details !== undefined) details.freeFixed.ofMember.set(run.fixed.ofMember);
  for (let g = 0; g < groups.length; g++) {
    const group = groups[g]!;
    stepPlane(group, g, run.light, lanes, run.planes[g]!, run.fixed, noteAll);
    if (details !== undefined && group.unshaded !== null) {
      stepPlane(group.unshaded, g, run.light, lanes, details.freePlanes[g]!, details.freeFixed, true);
    }
  }
}
