import { toGrid } from "../grid.ts";
import { requireRange, requireSameLength } from "../require.ts";
import { clearSky } from "./clearSky.ts";
import { dailyExtraterrestrialWhM2, sunsetAngleRad } from "./dailyExtraterrestrialWhM2.ts";
import { SOLAR_MS_PER_DEG, solarMidnightMs } from "./solarDay.ts";
import { sunTrack } from "./sunTrack.ts";

/** The brightest a whole day may be against a cloudless one; real days over 1 mean cleaner air than was assumed. */
export const MAX_DAY_CLEAR_INDEX = 1.25;
const DAY_MS = 86_400_000;
const STEP_MS = 300_000;

/** What turns a day's clearness Kt into a clear-sky index; one value per day that the event touches, in order. */
export interface DayLight {
  /** For each step, the position of its day in the arrays below. */
  readonly dayOfStep: Int32Array;
  /** H0 of the whole day, also where the event covers only a part of it. */
  readonly extraterrestrialWhM2: Float64Array;
  /** A cloudless sky's GHI over the whole day. */
  readonly clearWhM2: Float64Array;
  /** What of that the beam brings. */
  readonly clearBeamWhM2: Float64Array;
  /** Hour angle of sunset, for `monthlyDiffuseShare`. */
  readonly sunsetAngleRad: Float64Array;
  /** Clear-sky index for a Kt of 1: H0 over the cloudless day. 0 where the sun does not rise. */
  readonly clearIndexPerKt: Float64Array;
}

/** The place and its air, as `clearSky` takes them. */
export interface ClearSkySite {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number;
  readonly linkeTurbidity: number;
}

/**
 * Prepares the days of an event. Each day is taken whole, as the 24 hours of local mean solar time round its noon and on
 * its own 5-minute grid, so that an event from Friday 14:00 meets Friday's brightness and not the afternoon's.
 * @param timesMs middle of each step, UTC, rising
 * @param localDay the civil local day of each step: 0 first, then the same or one more, as `timeGrid` lays them
 * @throws RangeError if the arrays differ in length, a day owns no step or the place leaves its range
 */
export function dayLight(site: ClearSkySite, timesMs: Float64Array, localDay: Int32Array): DayLight {
  requireSameLength({ timesMs, localDay });
  requireRange({ latitudeDeg: site.latitudeDeg }, -90, 90);
  const dayOfStep = localDay.slice();
  const firstStep: number[] = [];
  for (let i = 0; i < timesMs.length; i++) {
    if (localDay[i] === firstStep.length) firstStep.push(i);
    else if (localDay[i] !== firstStep.length - 1) {
      throw new RangeError(`localDay must begin with 0 and rise by one at a time, got ${localDay[i]} at step ${i}`);
    }
  }
  const extraterrestrialWhM2 = new Float64Array(firstStep.length);
  const clearWhM2 = new Float64Array(firstStep.length);
  const clearBeamWhM2 = new Float64Array(firstStep.length);
  const sunset = new Float64Array(firstStep.length);
  const clearIndexPerKt = new Float64Array(firstStep.length);
  for (let day = 0; day < firstStep.length; day++) {
    const noonMs = insideOfDayMs(timesMs, firstStep, day);
    const solarMs = noonMs + site.longitudeDeg * SOLAR_MS_PER_DEG;
    extraterrestrialWhM2[day] = dailyExtraterrestrialWhM2(site.latitudeDeg, solarMs);
    sunset[day] = sunsetAngleRad(site.latitudeDeg, solarMs);
    const clear = clearDay(site, solarMidnightMs(noonMs, site.longitudeDeg));
    clearWhM2[day] = clear.levelWhM2;
    clearBeamWhM2[day] = clear.beamWhM2;
    clearIndexPerKt[day] = clearWhM2[day]! > 0 ? toGrid(extraterrestrialWhM2[day]! / clearWhM2[day]!) : 0;
  }
  return { dayOfStep, extraterrestrialWhM2, clearWhM2, clearBeamWhM2, sunsetAngleRad: sunset, clearIndexPerKt };
}

/**
 * An instant near the middle of a civil day. A midnight that lies within the event tells it exactly; an event within one
 * day has none, and its own middle has to do (next to midnight that may name the neighbouring day, 1 % off at most).
 */
function insideOfDayMs(timesMs: Float64Array, firstStep: number[], day: number): number {
  const first = firstStep[day]!;
  const next = firstStep[day + 1];
  if (day > 0) return (timesMs[first]! + timesMs[first - 1]!) / 2 + DAY_MS / 2;
  if (next !== undefined) return (timesMs[next]! + timesMs[next - 1]!) / 2 - DAY_MS / 2;
  return (timesMs[0]! + timesMs[timesMs.length - 1]!) / 2;
}

/** A cloudless day's light on the level, and what of it the beam brings. */
function clearDay(site: ClearSkySite, midnightMs: number): { levelWhM2: number; beamWhM2: number } {
  const timesMs = Float64Array.from({ length: DAY_MS / STEP_MS }, (_, i) => midnightMs + (i + 0.5) * STEP_MS);
  const sun = sunTrack(site.latitudeDeg, site.longitudeDeg, timesMs);
  const { ghiWm2, dhiWm2 } = clearSky(sun, timesMs, site.longitudeDeg, site.elevationM, site.linkeTurbidity);
  const sumWh = (watts: Float64Array) => watts.reduce((sum, wm2) => sum + wm2, 0) * (STEP_MS / 3_600_000);
  return { levelWhM2: sumWh(ghiWm2), beamWhM2: sumWh(ghiWm2) - sumWh(dhiWm2) };
}

/**
 * The constant clear-sky index that makes each day's light on the level Kt × H0, written per step. Days that would have
 * to be brighter than 1.25 times a cloudless one are held there.
 * @param light from `dayLight`
 * @param ktOfDay clearness of each day, 0…1, GHI over H0
 * @param out one value per step; 0 where the sun does not rise
 * @returns how many days were held at the limit, to be said on the screen
 * @memberLoop
 */
export function dayClearIndex(light: DayLight, ktOfDay: Float64Array, out: Float64Array): number {
  let held = 0;
  for (let day = 0; day < ktOfDay.length; day++) {
    if (ktOfDay[day]! * light.clearIndexPerKt[day]! > MAX_DAY_CLEAR_INDEX) held++;
  }
  for (let i = 0; i < out.length; i++) {
    const day = light.dayOfStep[i]!;
    out[i] = Math.max(0, Math.min(MAX_DAY_CLEAR_INDEX, ktOfDay[day]! * light.clearIndexPerKt[day]!));
  }
  return held;
}
