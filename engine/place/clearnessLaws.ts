/** Where weather changes most from day to day: the latitude of the westerlies' storms, and how far to either side. */
const STORMS_DEG = 42;
const STORMS_REACH_DEG = 14;
/** No spread can be typed in or drawn beyond this. */
const MOST_SD = 0.3;
/** Brightest Kt at sea level, where days no longer differ. */
const BRIGHTEST = 0.85;

/** 1 in the middle of the storm belt of either half of the globe, 0 far from it. */
export function stormBelt(latitudeDeg: number): number {
  return Math.exp(-(((Math.abs(latitudeDeg) - STORMS_DEG) / STORMS_REACH_DEG) ** 2));
}

/** 1 in midwinter, −1 in midsummer. @param month 0 for January */
export function winterness(latitudeDeg: number, month: number): number {
  return Math.cos((2 * Math.PI * (month - 0.1)) / 12) * (latitudeDeg < 0 ? -1 : 1);
}

/**
 * Standard deviation of daily clearness within a month by cloudiness, region and season: nothing under endless cloud or endless
 * sun, most between, a third more again in the storm belt, most of all in its winters. Three figures, fitted on 23 measured
 * records; at a record left out rms 0.020 (by its mean and latitude alone 0.027). See docs/fits/climate.md.
 */
export function sdOfKt(kt: number, latitudeDeg: number, month: number): number {
  const belt = stormBelt(latitudeDeg);
  const restless = 0.684 + 0.427 * belt + 0.093 * belt * winterness(latitudeDeg, month);
  return clamp(kt * (BRIGHTEST - kt) * restless, 0.04, MOST_SD);
}

/** Correlation of a day's clearness with the day before's, by the mean: fitted on the same records; at one left out rms 0.107. */
export function r1OfKt(kt: number): number {
  return clamp(-0.04 + 0.74 * kt, 0.08, 0.6);
}

/** What the grid lacks of the mean in the winters of the storm belt. */
export function gridLacks(latitudeDeg: number, month: number): number {
  return 0.02 * stormBelt(latitudeDeg) * Math.max(0, winterness(latitudeDeg, month));
}

export function clamp(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, value));
}
