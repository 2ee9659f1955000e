import { toGrid } from "../grid.ts";
import { noonHeightDeg } from "./dailyExtraterrestrialWhM2.ts";
import type { ClearSkySite } from "./dayClearIndex.ts";
import { SOLAR_MS_PER_DEG, solarHour } from "./solarDay.ts";

/**
 * Cloud that builds after noon over high ground under a high sun. Fitted on two measured months, the only ones at hand that have it: the foot
 * of the Rockies in June and the high desert beside them in May (docs/fits/hourly-cloud.md); lowland months under 51 to 56° north have none.
 */
export const AFTERNOON_FIT = {
  /** How far the normal value of morning hours lies over that of the day, and that of late hours under it. */
  lean: 0.52,
  /** True solar hour at which morning passes into afternoon, and hours that it takes to either side. */
  turnSolarHour: 11.5,
  turnH: 2,
  /** Height of the ground above the sea from which on there is any, and at which there is all of it, m. */
  fromM: 500,
  fullFromM: 1500,
  /** Height of the sun at noon from which on there is any, and at which there is all of it, degrees. */
  fromNoonDeg: 45,
  fullFromNoonDeg: 60,
} as const;

/**
 * How far the normal value behind each daylight step's cloud leans towards bright (over 0) or dull (under 0). All 0 in lowlands and in winter.
 * @param timesMs middle of each step, UTC
 */
export function afternoonLean(
  { latitudeDeg, longitudeDeg, elevationM }: Pick<ClearSkySite, "latitudeDeg" | "longitudeDeg" | "elevationM">,
  timesMs: Float64Array,
): Float64Array {
  const { lean, turnSolarHour, turnH, fromM, fullFromM, fromNoonDeg, fullFromNoonDeg } = AFTERNOON_FIT;
  const high = way(elevationM, fromM, fullFromM);
  return timesMs.map((timeMs) => {
    const noonDeg = noonHeightDeg(latitudeDeg, timeMs + longitudeDeg * SOLAR_MS_PER_DEG);
    const most = lean * high * way(noonDeg, fromNoonDeg, fullFromNoonDeg);
    return most > 0 ? toGrid(most * Math.tanh((turnSolarHour - solarHour(timeMs, longitudeDeg)) / turnH)) : 0;
  });
}

/** 0 up to the one, 1 from the other on, straight between. */
function way(value: number, from: number, to: number): number {
  return Math.max(0, Math.min(1, (value - from) / (to - from)));
}
