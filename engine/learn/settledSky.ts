import type { Prepared } from "../run/prepare.ts";

/** How much of the sky lies behind a step: days that are over, and perhaps one that is passing. */
export interface SettledSky {
  /** Local days whose clearness is settled, from the first on. */
  readonly days: number;
  /** Steps of the day that is passing; none at night, before its first light. */
  readonly passingFrom: number;
  readonly passingSteps: number;
}

/**
 * What of the sky is settled at a step. A day is settled from its first light on: the particle that explains its morning keeps
 * its afternoon too, and skies differ again from the next midnight on.
 * @param step 0…steps
 */
export function settledSky(prepared: Prepared, step: number): SettledSky {
  const { grid, clear } = prepared;
  if (step === 0) return { days: 0, passingFrom: 0, passingSteps: 0 };
  const day = grid.localDay[step - 1]!;
  const first = grid.localDay.indexOf(day);
  const next = grid.localDay.indexOf(day + 1);
  const end = next < 0 ? grid.steps : next;
  let isLit = false;
  for (let i = first; i < step; i++) isLit ||= clear.ghiWm2[i]! > 0;
  if (!isLit) return { days: day, passingFrom: first, passingSteps: 0 };
  return { days: day + 1, passingFrom: first, passingSteps: end - first };
}
