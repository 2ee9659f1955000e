import { clockMinute } from "../scenario/clockTime.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";

/** Minutes that one turn of a group takes where nobody says (common practice, no source). */
export const MINUTES_A_TURN = 3;

/** How often in an event the clock shows one of these times. */
export function turnsIn(times: readonly string[], { localMinute, stepMs, steps }: TimeGrid): number {
  const half = stepMs / 120_000;
  let turns = 0;
  for (let i = 0; i < steps; i++) {
    const from = localMinute[i]! - half;
    for (const time of times) if (clockMinute(time) >= from && clockMinute(time) < from + 2 * half) turns++;
  }
  return turns;
}
