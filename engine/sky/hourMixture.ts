import { toGrid } from "../grid.ts";
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
  // On the grid already here: what a dark day's mean loses by subtracting would otherwise tell one JavaScript engine's tables from another's.
  const cloudMean = toGrid(Math.max(0, clearIndex - above / cloudy));
  return {
    clearShare: 1 - cloudy,
    clearIndex,
    clearSpread,
    cloud: settled(boundedShape(cloudMean, toGrid(Math.sqrt(cloudVariance)), 0, high)),
  };
}

/** Steps of a shape's numbers, coarser than what its search leaves open where a dark day's mean lies at the bound. */
const SHAPE_STEPS = 2 ** 10;

/** The shape with its numbers on a grid: where the search for them ends depends on last bits, which differ from one JavaScript engine to the next. */
function settled(shape: BoundedShape): BoundedShape {
  const onGrid = (value: number) => Math.round(value * SHAPE_STEPS) / SHAPE_STEPS;
  return { ...shape, shift: onGrid(shape.shift), scale: onGrid(shape.scale) };
}

/** The index under which a share of the hours lies that is `normalShare(z)`. */
export function mixtureValue({ clearShare, clearIndex, clearSpread, cloud }: HourMixture, z: number): number {
  // The smaller tail: near 1 a share's last bit, which differs from one JavaScript engine to the next, would move the index by far more.
  const isUpper = z > 0;
  const tail = (at: number) => normalShare(isUpper ? -at : at);
  const wanted = tail(z);
  let low = cloud.low;
  let high = cloud.high;
  for (let round = 0; round < HALVINGS; round++) {
    const middle = 0.5 * (low + high);
    const x = (middle - cloud.low) / (cloud.high - cloud.low);
    const clouded = tail((Math.log(x / (1 - x)) - cloud.shift) / cloud.scale);
    const clear = tail((middle - clearIndex) / clearSpread);
    const share = clearShare * clear + (1 - clearShare) * clouded;
    if (isUpper ? share > wanted : share < wanted) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
