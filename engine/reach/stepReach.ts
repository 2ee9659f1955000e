import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { NOTHING_W } from "../odds/stepCount.ts";
import { ROW_SLOTS, ROW_STORED_AH, ROW_UNSERVED_W, type RunRows } from "../run/runRows.ts";
import { STATE_SLOTS, STORED_AH } from "../run/stepState.ts";

/**
 * Whether the member in a lane holds: never under the reserve, and nothing that was planned goes without.
 * @memberLoop
 */
export function stepReachHolds({ prepared }: PreparedEnsemble, run: RunRows, lane: number, reserveAh: number): boolean {
  const { rows } = run;
  const { steps } = prepared.grid;
  const last = (lane + 1) * steps * ROW_SLOTS;
  for (let row = lane * steps * ROW_SLOTS; row < last; row += ROW_SLOTS) {
    if (rows[row + ROW_STORED_AH]! < reserveAh || rows[row + ROW_UNSERVED_W]! > NOTHING_W) return false;
  }
  return run.state[lane * STATE_SLOTS + STORED_AH]! >= reserveAh;
}
