import { type Ruler, rulerHours } from "../ruler/ruler.ts";

const HOUR_MS = 3_600_000;
/** Below this a day's column cannot carry its name; the chart scrolls instead. */
const LEAST_DAY_PX = 72;
/** What the drawings use, and what a phone keeps whatever its width. */
const USUAL_DAY_PX = 216;

/** Time along the page: equal hours, so that a day of 25 hours has the wider column. */
export interface TimeScale {
  readonly ruler: Ruler;
  readonly pxPerHour: number;
  readonly widthPx: number;
  x(ms: number): number;
  ms(x: number): number;
}

/** Whether two scales put every instant in the same place. */
export function isSameScale(a: TimeScale, b: TimeScale): boolean {
  return a.pxPerHour === b.pxPerHour && a.ruler.startMs === b.ruler.startMs && a.ruler.endMs === b.ruler.endMs;
}

/**
 * Fits whole days into the width there is: 9 px to the hour for four days on a full sheet.
 * @param roomPx width for the days; null on a phone, where time scrolls at 9 px to the hour
 */
export function timeScale(ruler: Ruler, roomPx: number | null): TimeScale {
  const days = rulerHours(ruler) / 24;
  const fitted = roomPx === null ? USUAL_DAY_PX : Math.max(LEAST_DAY_PX, Math.floor(roomPx / days / 12) * 12);
  const pxPerHour = fitted / 24;
  return {
    ruler,
    pxPerHour,
    widthPx: rulerHours(ruler) * pxPerHour,
    x: (ms) => ((ms - ruler.startMs) / HOUR_MS) * pxPerHour,
    ms: (x) => ruler.startMs + (x / pxPerHour) * HOUR_MS,
  };
}
