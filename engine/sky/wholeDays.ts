import { EngineFault } from "../fault.ts";
import { toGrid } from "../grid.ts";
import { requireSameLength } from "../require.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { type ClearSky, clearSky } from "./clearSky.ts";
import type { ClearSkySite, DayLight } from "./dayClearIndex.ts";
import { sunTrack } from "./sunTrack.ts";

/** The daylight steps of all days that an event touches, each day whole, also where the event covers only a part. */
export interface WholeDays {
  readonly days: number;
  /** Where each day's daylight steps start in the arrays below; one more value than days. */
  readonly dayStart: Int32Array;
  /** Middle of each daylight step, UTC. */
  readonly timesMs: Float64Array;
  /** A cloudless sky's light on the level at each daylight step, W/m², above 0. */
  readonly clearWm2: Float64Array;
  /** The event's step that it is; −1 before the start and after the end. */
  readonly step: Int32Array;
  /** Clear-sky index of each day for a Kt of 1: H0 over the sum of the day's own steps; 0 in polar night. */
  readonly clearIndexPerKt: Float64Array;
}

/**
 * Lays the event's steps on to the midnights before its start and after its end, so that a day's clearness means the whole
 * day: who arrives on Friday at 14:00 meets the afternoon of a Friday.
 */
export function wholeDays(site: ClearSkySite, grid: TimeGrid, clear: ClearSky, light: DayLight): WholeDays {
  requireSameLength({ middleMs: grid.middleMs, ghiWm2: clear.ghiWm2, dayOfStep: light.dayOfStep });
  const days = light.extraterrestrialWhM2.length;
  if (days !== grid.dates.length) {
    throw new EngineFault(`the calendar of the event has ${grid.dates.length} days and its steps lie in ${days}`);
  }
  const stepMinutes = grid.stepMs / 60_000;
  const steps = grid.steps;
  // As many steps as begin between midnight and the start, and between the last step's beginning and midnight.
  const before = Math.floor(grid.startMinute / stepMinutes);
  const lastBegins = grid.localMinute[steps - 1]! - stepMinutes / 2;
  const after = Math.max(0, Math.ceil((1440 - lastBegins) / stepMinutes) - 1);
  const outsideMs = Float64Array.from([
    ...Array.from({ length: before }, (_, k) => grid.middleMs[0]! - (before - k) * grid.stepMs),
    ...Array.from({ length: after }, (_, k) => grid.middleMs[steps - 1]! + (k + 1) * grid.stepMs),
  ]);
  const sun = sunTrack(site.latitudeDeg, site.longitudeDeg, outsideMs);
  const outside = clearSky(sun, outsideMs, site.longitudeDeg, site.elevationM, site.linkeTurbidity).ghiWm2;
  const found: { day: number; timeMs: number; clear: number; step: number }[] = [];
  for (let k = 0; k < before; k++) found.push({ day: 0, timeMs: outsideMs[k]!, clear: outside[k]!, step: -1 });
  for (let i = 0; i < steps; i++) {
    found.push({ day: light.dayOfStep[i]!, timeMs: grid.middleMs[i]!, clear: clear.ghiWm2[i]!, step: i });
  }
  for (let k = before; k < before + after; k++) {
    found.push({ day: days - 1, timeMs: outsideMs[k]!, clear: outside[k]!, step: -1 });
  }
  const lit = found.filter((entry) => toGrid(entry.clear) > 0);
  const dayStart = new Int32Array(days + 1);
  for (const { day } of lit) dayStart[day + 1]!++;
  for (let day = 0; day < days; day++) dayStart[day + 1]! += dayStart[day]!;
  const clearWm2 = Float64Array.from(lit, (entry) => toGrid(entry.clear));
  const clearIndexPerKt = new Float64Array(days);
  for (let day = 0; day < days; day++) {
    let clearWhM2 = 0;
    for (let k = dayStart[day]!; k < dayStart[day + 1]!; k++) clearWhM2 += clearWm2[k]! * grid.stepH;
    if (clearWhM2 > 0) clearIndexPerKt[day] = toGrid(light.extraterrestrialWhM2[day]!) / clearWhM2;
  }
  return {
    days,
    dayStart,
    timesMs: Float64Array.from(lit, (entry) => entry.timeMs),
    clearWm2,
    step: Int32Array.from(lit, (entry) => entry.step),
    clearIndexPerKt,
  };
}
