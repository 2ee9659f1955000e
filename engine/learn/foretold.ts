import { openCircuitV } from "../bank/bankVoltage.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { MemberRoom } from "../ensemble/stepMember.ts";
import { FIGURE_CAPACITY_SHARE, FIGURE_IDLE_SHARE } from "../run/memberFigures.ts";
import {
  BANK_SLOTS,
  BANK_V,
  ROW_SLOTS,
  ROW_SOLAR_W,
  ROW_SPILLED_W,
  ROW_STORED_AH,
  type RunRows,
} from "../run/runRows.ts";
import { STORED_AH } from "../run/stepState.ts";
import type { Observation } from "./observations.ts";

/** Light and panels at one moment are compared with the mean of half an hour to either side. */
const AROUND_H = 0.5;

/**
 * What a particle's finished run would have shown on the meters, in the unit of the observation.
 * @param first the step from which the run was made; rows before it are another's
 * @returns null where the run says nothing, such as for the sky of a day that has had no light yet
 */
export function foretold(
  observation: Observation,
  { prepared, skies }: PreparedEnsemble,
  { run, inputs }: MemberRoom,
  first: number,
): number | null {
  const { figures } = inputs;
  const { bank, grid, loads, converterShare } = prepared;
  const i = Math.min(grid.steps - 1, Math.floor(observation.place));
  switch (observation.kind) {
    case "charge":
      return storedAhAt(observation.place, grid.steps, run) / bank.fullAh;
    case "outAh": {
      // The bank is counted in planned ampere-hours; a meter counts those that flow.
      return (bank.fullAh - storedAhAt(observation.place, grid.steps, run)) * figures[FIGURE_CAPACITY_SHARE]!;
    }
    case "restV":
      return openCircuitV(bank, storedAhAt(observation.place, grid.steps, run));
    case "panelsW": {
      const around = Math.max(0, Math.round(AROUND_H / grid.stepH));
      let sum = 0;
      let count = 0;
      for (let k = Math.max(first, i - around); k <= Math.min(grid.steps - 1, i + around); k++) {
        sum += run.rows[k * ROW_SLOTS + ROW_SOLAR_W]! - run.rows[k * ROW_SLOTS + ROW_SPILLED_W]!;
        count++;
      }
      return sum / count;
    }
    case "loadA": {
      const volts = Math.max(1, run.bankRows[i * BANK_SLOTS + BANK_V]!);
      return (loads.quietW[i]! * figures[FIGURE_IDLE_SHARE]!) / converterShare / volts;
    }
    case "sky": {
      if (observation.day < grid.localDay[i]!) return skies.indexOfDay[observation.day]!;
      let light = 0;
      let clear = 0;
      for (let k = 0; k < grid.steps && k < observation.place; k++) {
        if (grid.localDay[k] !== observation.day) continue;
        light += skies.indexOfStep[k]! * prepared.clear.ghiWm2[k]!;
        clear += prepared.clear.ghiWm2[k]!;
      }
      return clear > 0 ? light / clear : null;
    }
  }
}

/** Charge at a place between two steps, on a straight line. */
function storedAhAt(place: number, steps: number, run: RunRows): number {
  const at = (k: number) => (k >= steps ? run.state[STORED_AH]! : run.rows[k * ROW_SLOTS + ROW_STORED_AH]!);
  const k = Math.floor(place);
  const left = at(k);
  return left + (place - k) * (at(Math.min(steps, k + 1)) - left);
}
