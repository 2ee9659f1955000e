import { finding } from "./finding.ts";
import type { MeterFinding } from "./meterLog.ts";
import { span } from "./span.ts";

/** Gaps longer than so many usual intervals are named. */
const GAP_INTERVALS = 3;

/** From one row to the next, as it mostly is: the median, ms. @param timeMs two instants or more, rising */
export function usualInterval(timeMs: Float64Array): number {
  const intervals = new Float64Array(timeMs.length - 1);
  for (let k = 0; k < intervals.length; k++) intervals[k] = timeMs[k + 1]! - timeMs[k]!;
  intervals.sort();
  return intervals[Math.floor(intervals.length / 2)]!;
}

/** What is to be said of gaps. @param lines of the file, by row */
export function gapFindings(timeMs: Float64Array, usualMs: number, lines: readonly number[]): MeterFinding[] {
  let count = 0;
  let sumMs = 0;
  let longest = 0;
  let longestAt = -1;
  for (let k = 1; k < timeMs.length; k++) {
    const gapMs = timeMs[k]! - timeMs[k - 1]!;
    if (gapMs <= GAP_INTERVALS * usualMs) continue;
    count++;
    sumMs += gapMs;
    if (gapMs > longest) {
      longest = gapMs;
      longestAt = k;
    }
  }
  if (count === 0) return [];
  const words = `${count === 1 ? "One gap" : `${count} gaps`} of more than ${span(GAP_INTERVALS * usualMs)}, ${span(sumMs)} together; the longest, ${span(longest)}, ends on line ${lines[longestAt]}.`;
  return [finding("gaps", words, count, lines[longestAt]!)];
}
