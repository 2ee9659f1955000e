import { clearFixedPower, type FixedPower, MEMBER_CROWNS, MEMBER_YIELD } from "../array/fixedPower.ts";
import { stepPlane } from "../array/stepPlane.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import { crownLean, FIGURE_START_SHARE, FIGURE_YIELD_SHARE } from "./memberFigures.ts";
import type { MemberInputs } from "./memberInputs.ts";
import type { Prepared } from "./prepare.ts";
import type { RunDetails } from "./runDetails.ts";
import type { RunRows } from "./runRows.ts";
import { stepBank } from "./stepBank.ts";
import { CONNECTED, DROPOUT_H, LAST_A, STORED_AH } from "./stepState.ts";

/**
 * Carries one member through the whole event: in every step the sun is offered, sources that may run are offered, the loads
 * take what they want, and the bank takes or gives the rest within its limits. Solar goes first, sources fill up what is
 * left. What cannot be used is spilled and what cannot be had is unserved; both are counted.
 *
 * In every step: solar − spilled + sources + bank discharge = served + bank charge.
 * @param light the member's sky; one value per step
 * @param airTempC the member's air; one value per step
 * @param inputs the member's loads and limits
 * @param run where everything is written
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
  stepStart(prepared, inputs, run);
  stepOnward(prepared, light, airTempC, inputs, run, 0, details);
}

/** How things stand before the first step. */
function stepStart(prepared: Prepared, inputs: MemberInputs, run: RunRows): void {
  const { state } = run;
  state[STORED_AH] = prepared.bank.fullAh * inputs.figures[FIGURE_START_SHARE]!;
  state[LAST_A] = 0;
  state[DROPOUT_H] = 0;
  state[CONNECTED] = 1;
  for (let s = 0; s < prepared.sources.length; s++) {
    run.runs[s] = 0;
    run.fuelLeftL[s] = prepared.sources[s]!.fuelL;
  }
}

/** The second half of `stepRun`, for which `stepPanels` has been through: from the first step to the last, with nothing noted but the rows. */
export function stepPower(prepared: Prepared, inputs: MemberInputs, run: RunRows): void {
  stepStart(prepared, inputs, run);
  stepBank(prepared, inputs, run, 0, isNoted(prepared, undefined), undefined);
}

/**
 * Carries a member on from step `first` to the end; `run.state`, `run.runs` and `run.fuelLeftL` say how things stand there.
 * @param first 0…steps
 */
export function stepOnward(
  prepared: Prepared,
  light: SkyLight,
  airTempC: Float64Array,
  inputs: MemberInputs,
  run: RunRows,
  first: number,
  details?: RunDetails,
): void {
  stepPanels(prepared, light, airTempC, inputs, run, details);
  stepBank(prepared, inputs, run, first, isNoted(prepared, details), details);
}

/** Whether every step of every group is written down: traces, and runs in which one input shuts out another. */
function isNoted(prepared: Prepared, details: RunDetails | undefined): boolean {
  return details !== undefined || prepared.selector.inputs > 0;
}

/** Hands the panels what is the member's own: their yield and its crowns. */
export function stepOwnFigures({ figures }: MemberInputs, { ofMember }: FixedPower): void {
  ofMember[MEMBER_YIELD] = figures[FIGURE_YIELD_SHARE]!;
  ofMember[MEMBER_CROWNS] = crownLean(figures);
}

/** What the sky makes of all panels, for all steps at once; as in `stepRun`, whose first half it is. */
export function stepPanels(
  prepared: Prepared,
  light: SkyLight,
  airTempC: Float64Array,
  inputs: MemberInputs,
  run: RunRows,
  details?: RunDetails,
): void {
  const { groups } = prepared;
  stepOwnFigures(inputs, run.fixed);
  if (details !== undefined) stepOwnFigures(inputs, details.freeFixed);
  const noteAll = isNoted(prepared, details);
  clearFixedPower(run.fixed);
  for (let g = 0; g < groups.length; g++) {
    const group = groups[g]!;
    stepPlane(group, g, light, airTempC, run.planes[g]!, run.fixed, noteAll);
    if (details !== undefined && group.unshaded !== null) {
      stepPlane(group.unshaded, g, light, airTempC, details.freePlanes[g]!, details.freeFixed, true);
    }
  }
}
