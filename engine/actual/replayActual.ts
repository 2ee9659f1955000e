import { FIGURE_CAPACITY_SHARE, FIGURE_START_SHARE } from "../run/memberFigures.ts";
import type { Prepared } from "../run/prepare.ts";
import { makeRunRows, ROW_SLOTS, ROW_STORED_AH, type RunRows } from "../run/runRows.ts";
import { stepBank } from "../run/stepBank.ts";
import { stepLaneFigures, stepLaneWanted } from "../run/stepRun.ts";
import { STORED_AH } from "../run/stepState.ts";

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
  const figures = prepared.inputs.figures.slice();
  return (input, untilStep) => {
    const { state } = run;
    figures[FIGURE_START_SHARE] = input.startShare;
    figures[FIGURE_CAPACITY_SHARE] = input.capacityShare;
    stepLaneFigures(prepared, figures, run, 0);
    stepLaneWanted(input.wantedW, run, 0);
    // The sun is given, so no group depends on the bank's volts.
    run.fixed.sumW.set(input.sunW);
    run.fixed.coupled.fill(0);
    stepBank(prepared, run, 1, 0, false, undefined);
    const storedAh =
      untilStep < prepared.grid.steps ? run.rows[untilStep * ROW_SLOTS + ROW_STORED_AH]! : state[STORED_AH]!;
    return storedAh / prepared.bank.fullAh;
  };
}
