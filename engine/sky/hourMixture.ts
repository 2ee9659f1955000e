import { type BoundedShape, boundedShape } from "./johnsonSb.ts";
import { normalShare } from "./normalShare.ts";

/**
 * The hours of a day as they come: some under a clear sky, all but alike, and the others under cloud, anywhere between dark and bright. Fitted with
 * the rest of `CLOUD_FIT` (docs/fits/hourly-cloud.md).
 */
interface HourMixture {
  readonly clearShare: number;
  readonly clearIndex: number;
  readonly clearSpread: number;
  readonly cloud: BoundedShape;
}

const MIXTURE_FIT = {
  /** Clear-sky index of clear hours, at least this much, and at least this much over the day's own. */
  clearIndex: 0.98,
  overDay: 0.01,
  /** Standard deviation of clear hours: on a clear day, and how much more for each unit that a day falls short of one: cloud edges add light. */
  clearSpread: 0.03,
  edgeSpread: 0.1,
  clearDay: 0.95,
  mostClearSpread: 0.07,
  /** Share of the variance in the day that clouds have among themselves. */
  cloudShare: 0.7,
} as const;

/** Cloud takes at least this much of a day that is not cloudless throughout. */
const LEAST_CLOUD_SHARE = 0.02;
const HALVINGS = 40;

/**
 * The mixture with a day's mean and spread.
 * @param dayIndex clear-sky index of the day, 0 or more
 * @param spread standard deviation of its hours' index
 * @param high brightest hour
 */
export function hourMixture(dayIndex: number, spread: number, high: number): HourMixture {
  const { cloudShare, edgeSpread, clearDay, mostClearSpread } = MIXTURE_FIT;
  const short = Math.max(0, clearDay - dayIndex);
  const clearSpread = Math.min(mostClearSpread, MIXTURE_FIT.clearSpread + edgeSpread * short);
  const clearIndex = Math.max(MIXTURE_FIT.clearIndex, dayIndex + MIXTURE_FIT.overDay);
  const above = clearIndex - dayIndex;
  const cloudVariance = cloudShare * spread * spread;
  let cloudy = 0.5;
  for (let round = 0; round < HALVINGS; round++) {
    const apart =
      (spread * spread + above * above - (1 - cloudy) * clearSpread * clearSpread - cloudy * cloudVariance) / above;
    const found = apart > above ? above / apart : 1;
    cloudy = 0.5 * (cloudy + Math.max(LEAST_CLOUD_SHARE, found));
  }
  const cloudMean = Math.max(0, clearIndex - above / cloudy);
  return {
    clearShare: 1 - cloudy,
    clearIndex,
    clearSpread,
    cloud: boundedShape(cloudMean, Math.sqrt(cloudVariance), 0, high),
  };
}

/** The index under which a share of the hours lies that is `normalShare(z)`. */
export function mixtureValue({ clearShare, clearIndex, clearSpread, cloud }: HourMixture, z: number): number {
  const wanted = normalShare(z);
  let low = cloud.low;
  let high = cloud.high;
  for (let round = 0; round < HALVINGS; round++) {
    const middle = 0.5 * (low + high);
    const x = (middle - cloud.low) / (cloud.high - cloud.low);
    const clouded = normalShare((Math.log(x / (1 - x)) - cloud.shift) / cloud.scale);
    const clear = normalShare((middle - clearIndex) / clearSpread);
    if (clearShare * clear + (1 - clearShare) * clouded < wanted) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
