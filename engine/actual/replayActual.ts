import { FIGURE_CAPACITY_SHARE, FIGURE_START_SHARE } from "../run/memberFigures.ts";
import { ownInputs } from "../run/memberInputs.ts";
import type { Prepared } from "../run/prepare.ts";
import { makeRunRows, ROW_STORED_AH, type RunRows } from "../run/runRows.ts";
import { stepBank } from "../run/stepBank.ts";
import { CONNECTED, LAST_A, STORED_AH } from "../run/stepState.ts";

/** What the bank is told: any of it may be the plan's, or what the meter says. */
export interface ReplayInput {
  readonly startShare: number;
  /** Capacity over the planned one. */
  readonly capacityShare: number;
  /** What loads want, controllers' own draw left out, and what the sun offers the bank; one value per step, W. */
  readonly wantedW: Float64Array;
  readonly sunW: Float64Array;
}

/**
 * Carries a bank through an event in which sun and load are given; what sources may run add to the sun, also where a selector stands between.
 * @returns a function from what is given to the charge at the start of a step, share of full
 */
export function makeReplay(prepared: Prepared): (input: ReplayInput, untilStep: number) => number {
  const run: RunRows = makeRunRows(prepared);
  const own = ownInputs(prepared.inputs, new Float64Array(prepared.grid.steps));
  return (input, untilStep) => {
    const { state } = run;
    own.figures[FIGURE_START_SHARE] = input.startShare;
    own.figures[FIGURE_CAPACITY_SHARE] = input.capacityShare;
    state[STORED_AH] = prepared.bank.fullAh * input.startShare;
    state[LAST_A] = 0;
    state[CONNECTED] = 1;
    prepared.sources.forEach((source, s) => {
      run.runs[s] = 0;
      run.fuelLeftL[s] = source.fuelL;
    });
    own.wantedW.set(input.wantedW);
    // The sun is given, so no group hangs on the bank's volts.
    run.fixed.sumW.set(input.sunW);
    run.fixed.hanging.fill(0);
    stepBank(prepared, own, run, 0, false, undefined);
    const storedAh =
      untilStep < prepared.grid.steps ? run.rows[untilStep * run.stride + ROW_STORED_AH]! : state[STORED_AH]!;
    return storedAh / prepared.bank.fullAh;
  };
}
