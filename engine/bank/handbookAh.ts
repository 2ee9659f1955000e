import { requireRange } from "../require.ts";

/** What a sizing by hand starts from. Shares are 0…1. */
export interface HandbookSizing {
  /** Ampere-hours that the loads take in a day. */
  readonly dailyAh: number;
  /** Days to be bridged without any charge. */
  readonly autonomyDays: number;
  /** Deepest discharge at the end of that time, and on an ordinary day. */
  readonly maxDepthShare: number;
  readonly maxDailyDepthShare?: number;
  /** Capacity left at the end of the bank's life. */
  readonly endOfLifeShare?: number;
  /** Multiplier for a cold bank, 1 at 25 °C. */
  readonly temperatureFactor?: number;
  /** Multiplier for what is not known. */
  readonly marginFactor?: number;
}

/**
 * The bank that the handbook would bring, Ah: the largest of three needs, times what cold and margin ask for. A sober
 * cross-check of a simulation, not a standard's own calculation: read the standard before relying on its name.
 * @throws RangeError if a value leaves its range
 * @see IEEE Std 1013 (sizing lead-acid batteries for stand-alone photovoltaic systems); steps from memory
 */
export function handbookAh(sizing: HandbookSizing): number {
  const { dailyAh, autonomyDays, maxDepthShare } = sizing;
  const { maxDailyDepthShare = 1, endOfLifeShare = 1, temperatureFactor = 1, marginFactor = 1 } = sizing;
  requireRange({ dailyAh, autonomyDays }, 0, 1e6);
  requireRange({ maxDepthShare, maxDailyDepthShare, endOfLifeShare }, 0.01, 1);
  requireRange({ temperatureFactor, marginFactor }, 1, 5);
  const bridgedAh = dailyAh * autonomyDays;
  const neededAh = Math.max(bridgedAh / maxDepthShare, dailyAh / maxDailyDepthShare, bridgedAh / endOfLifeShare);
  return neededAh * temperatureFactor * marginFactor;
}
