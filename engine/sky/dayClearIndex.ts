import { toGrid } from "../grid.ts";
import { requireRange, requireSameLength } from "../require.ts";
import { cleanSkyShare } from "./cleanSky.ts";
import { clearSky, pressureShare } from "./clearSky.ts";
import { dailyExtraterrestrialWhM2, sunsetAngleRad } from "./dailyExtraterrestrialWhM2.ts";
import { SOLAR_MS_PER_DEG, solarMidnightMs } from "./solarDay.ts";
import { sunTrack } from "./sunTrack.ts";

/** The brightest a day of a weather file may be against a cloudless one; real days over 1 mean cleaner air than was assumed. */
export const MAX_DAY_CLEAR_INDEX = 1.25;
/** Light on the level over light above the air is never more than this, whatever the place. */
export const LARGEST_KT = 0.9;
/**
 * The brightest that a drawn day may be against the cleanest cloudless one: snow throws light back up, and the sky some of it down
 * again. 1 % of the days of twelve long records pass the clean sky, nearly all of them over snow, and 0.2 % pass this.
 */
const SNOW_LIT = 1.05;
/** Where the sun hardly rises a cloudless day is known too badly to multiply it by more than this. */
export const MOST_DAY_INDEX = 2.5;
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
  /** The largest Kt that is believed: 1.05 times the light of the cleanest cloudless day; less than 1. */
  readonly brightestKt: Float64Array;
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
  const brightestKt = new Float64Array(firstStep.length);
  for (let day = 0; day < firstStep.length; day++) {
    const noonMs = insideOfDayMs(timesMs, firstStep, day);
    const solarMs = noonMs + site.longitudeDeg * SOLAR_MS_PER_DEG;
    extraterrestrialWhM2[day] = dailyExtraterrestrialWhM2(site.latitudeDeg, solarMs);
    sunset[day] = sunsetAngleRad(site.latitudeDeg, solarMs);
    const clear = clearDay(site, solarMidnightMs(noonMs, site.longitudeDeg));
    clearWhM2[day] = clear.levelWhM2;
    clearBeamWhM2[day] = clear.beamWhM2;
    clearIndexPerKt[day] = clearWhM2[day]! > 0 ? toGrid(extraterrestrialWhM2[day]! / clearWhM2[day]!) : 0;
    const brightestWhM2 = Math.min(SNOW_LIT * clear.cleanWhM2, MOST_DAY_INDEX * clear.levelWhM2);
    brightestKt[day] =
      extraterrestrialWhM2[day]! > 0 ? toGrid(Math.min(LARGEST_KT, brightestWhM2 / extraterrestrialWhM2[day]!)) : 0;
  }
  return {
    dayOfStep,
    extraterrestrialWhM2,
    clearWhM2,
    clearBeamWhM2,
    sunsetAngleRad: sunset,
    clearIndexPerKt,
    brightestKt,
  };
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

/** A cloudless day's light on the level, what of it the beam brings, and the light of the cleanest cloudless day. */
function clearDay(site: ClearSkySite, midnightMs: number): { levelWhM2: number; beamWhM2: number; cleanWhM2: number } {
  const timesMs = Float64Array.from({ length: DAY_MS / STEP_MS }, (_, i) => midnightMs + (i + 0.5) * STEP_MS);
  const sun = sunTrack(site.latitudeDeg, site.longitudeDeg, timesMs);
  const sky = clearSky(sun, timesMs, site.longitudeDeg, site.elevationM, site.linkeTurbidity);
  const { ghiWm2, dhiWm2 } = sky;
  const pressure = pressureShare(site.elevationM);
  const cleanWm2 = sky.extraterrestrialWm2.map((above, i) => above * cleanSkyShare(sky.sinElevation[i]!, pressure));
  const sumWh = (watts: Float64Array) => watts.reduce((sum, wm2) => sum + wm2, 0) * (STEP_MS / 3_600_000);
  return { levelWhM2: sumWh(ghiWm2), beamWhM2: sumWh(ghiWm2) - sumWh(dhiWm2), cleanWhM2: sumWh(cleanWm2) };
}

/**
 * The constant clear-sky index that makes each day's light on the level Kt × H0, written per step.
 * @param light from `dayLight`
 * @param ktOfDay clearness of each day, 0…1, GHI over H0; from `usualClearness`, which holds it at what is believed
 * @param out one value per step; 0 where the sun does not rise
 * @memberLoop
 */
export function dayClearIndex(light: DayLight, ktOfDay: Float64Array, out: Float64Array): void {
  for (let i = 0; i < out.length; i++) {
    const day = light.dayOfStep[i]!;
    out[i] = Math.max(0, ktOfDay[day]! * light.clearIndexPerKt[day]!);
  }
}
