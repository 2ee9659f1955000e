import type { TimeForm } from "./meterMapping.ts";
import { dateNumbers, isEpoch, readMeterTime } from "./meterTime.ts";

/**
 * Finds the form of a log's dates. A day after the 12th settles the order of day and month; dates parted by points have the day first
 * (common practice, no source); else the order under which the log runs on from day to day without leaps wins.
 * @param cells dates as written, in the order of the file
 * @returns "ambiguous" where both orders make a log without leaps; null where nothing reads as a date
 */
export function timeFormOf(cells: readonly string[]): TimeForm | "ambiguous" | null {
  const first = cells.find((cell) => cell.trim() !== "");
  if (first === undefined) return null;
  if (isEpoch(first)) return first.trim().split(/[.,]/)[0]!.length > 11 ? "epochMs" : "epochS";
  let dayFirst = 0;
  let monthFirst = 0;
  let readable = 0;
  let yearFirst = 0;
  for (const cell of cells) {
    const numbers = dateNumbers(cell);
    if (numbers === null) continue;
    readable++;
    if (/^\s*\d{4}/.test(cell)) yearFirst++;
    else if (numbers[0] > 12 && numbers[0] <= 31) dayFirst++;
    else if (numbers[1] > 12 && numbers[1] <= 31) monthFirst++;
  }
  if (readable === 0) return null;
  if (yearFirst > readable / 2) return "yearFirst";
  if (dayFirst > 0 !== monthFirst > 0) return dayFirst > 0 ? "dayFirst" : "monthFirst";
  if (/^\s*\d{1,2}\./.test(first)) return "dayFirst";
  const [dayLeaps, monthLeaps] = [leaps(cells, "dayFirst"), leaps(cells, "monthFirst")];
  return dayLeaps === monthLeaps ? "ambiguous" : dayLeaps < monthLeaps ? "dayFirst" : "monthFirst";
}

/** How often the date leaps by more than a week, or back. */
function leaps(cells: readonly string[], form: TimeForm): number {
  let count = 0;
  let beforeMs = Number.NaN;
  for (const cell of cells) {
    const time = readMeterTime(cell, form);
    if (time === null) continue;
    const dayMs = Math.floor(time.clockMs / 86_400_000) * 86_400_000;
    if (dayMs - beforeMs > 7 * 86_400_000 || dayMs < beforeMs) count++;
    beforeMs = dayMs;
  }
  return count;
}
