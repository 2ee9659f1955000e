import type { TimeGrid } from "../scenario/timeGrid.ts";

const WEEKDAY_NAMES = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const MONTH_NAMES = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

const two = (value: number) => String(value).padStart(2, "0");

/** An instant of the event on the local clock. */
export interface LocalMoment {
  /** "2026-10-11" */
  readonly date: string;
  /** "07:40" */
  readonly clock: string;
  /** "Sun 11 Oct 07:40" */
  readonly words: string;
}

/** "Sun 11 Oct" for "2026-10-11". */
export function dayWords(date: string): string {
  const weekday = (new Date(`${date}T00:00Z`).getUTCDay() + 6) % 7;
  return `${WEEKDAY_NAMES[weekday]} ${Number(date.slice(8, 10))} ${MONTH_NAMES[Number(date.slice(5, 7)) - 1]}`;
}

/** Reads the local clock at an instant within (or at an end of) the event, to the minute. */
export function localMoment(grid: TimeGrid, ms: number): LocalMoment {
  const i = Math.min(grid.steps - 1, Math.max(0, Math.floor((ms - grid.startMs) / grid.stepMs)));
  const minutes = grid.localMinute[i]! + (ms - grid.middleMs[i]!) / 60_000;
  const noon = Date.parse(`${grid.dates[grid.localDay[i]!]}T00:00Z`);
  const local = new Date(noon + Math.round(minutes) * 60_000);
  const date = local.toISOString().slice(0, 10);
  const clock = `${two(local.getUTCHours())}:${two(local.getUTCMinutes())}`;
  return { date, clock, words: `${dayWords(date)} ${clock}` };
}
