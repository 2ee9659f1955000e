/**
 * Ratings that are sold, A: blade fuses up to 10 A (regular size: 1, 2, 3, 4, 5, 7.5, 10 A; common practice), above that the code's list.
 * @see NEC 2023 240.6(A), as printed by callout.app and sparkshift.app
 */
const FUSE_SIZES_A: readonly number[] = [
  1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350,
  400, 450, 500, 600,
];

/**
 * The smallest fuse that is sold which carries a load: rated above its peak, and for 1.25 times what flows for hours.
 * @param largestA what the smallest thing behind it allows; null when that is not known
 * @returns null where no fuse that is sold carries the load and still protects what is behind it
 */
export function fuseFor(peakA: number, continuousA: number, largestA: number | null): number | null {
  const found = FUSE_SIZES_A.find(
    (size) => size > peakA * (1 + ROUNDING) && size >= CONTINUOUS_FACTOR * continuousA * (1 - ROUNDING),
  );
  if (found === undefined || (largestA !== null && found > largestA)) return null;
  return found;
}

/** A peak that equals a fuse except for the last bits is not carried by it. */
const ROUNDING = 1e-9;

/** Whether a fuse has to be larger than `designA`, and not as large: where it is the peak that it must carry. */
export function isPeakBound(peakA: number, continuousA: number): boolean {
  return peakA >= CONTINUOUS_FACTOR * continuousA;
}

/** What a fuse, a wire or a switch has to carry: the greatest peak, and a quarter more than what flows for hours. */
export function designA(peakA: number, continuousA: number): number {
  return Math.max(peakA, CONTINUOUS_FACTOR * continuousA);
}

/**
 * What flows for three hours and more counts for a quarter more.
 * @see NEC 210.19(A) and 215.2 as quoted by IAEI Magazine, “Considering Clarified Cable Calculations”; 210.20(A) as quoted in a switchgear
 *   maker's data bulletin on ampacity; 215.3 could not be found in public text
 */
export const CONTINUOUS_FACTOR = 1.25;
