import type { TimeGrid } from "../scenario/timeGrid.ts";

/** Local days of an event that are neither cut short by coming nor by leaving, by their number. */
export function wholeDays({ startMinute, localMinute, stepMs, dates, steps }: TimeGrid): number[] {
  const endMinute = localMinute[steps - 1]! + stepMs / 120_000;
  const last = dates.length - 1;
  return Array.from(dates.keys()).filter(
    (day) => (day > 0 || startMinute < 1e-6) && (day < last || endMinute > 1440 - 1e-6),
  );
}

/** What each step counts for in a mean over the whole days; 1 throughout where an event has none, so that all of it is summed up. */
export function wholeDayWeights(grid: TimeGrid): Float64Array {
  const whole = wholeDays(grid);
  if (whole.length === 0) return new Float64Array(grid.steps).fill(1);
  return Float64Array.from(grid.localDay, (day) => (whole.includes(day) ? 1 / whole.length : 0));
}
