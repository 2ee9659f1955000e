import { clockMinute } from "../scenario/clockTime.ts";
import type { ClockWindow } from "../scenario/clockWindow.ts";

const DAY = 1440;

/** Minutes after midnight as the clock shows them: 570 as "09:30"; the day's end as "24:00". */
export function clockAt(minute: number): string {
  const within = minute > DAY ? minute - DAY : minute;
  return `${String(Math.floor(within / 60)).padStart(2, "0")}:${String(within % 60).padStart(2, "0")}`;
}

/** How long a stretch of the clock is, minutes; one that ends before it begins runs past midnight. */
export function lengthOf({ from, to }: ClockWindow): number {
  const length = clockMinute(to) - clockMinute(from);
  return length > 0 ? length : length + DAY;
}

/** Each stretch ended so many minutes earlier; those that are not longer fall away. */
export function endedEarlier(windows: readonly ClockWindow[], minutes: number): ClockWindow[] {
  return windows
    .filter((window) => lengthOf(window) > minutes)
    .map((window) => ({ ...window, to: clockAt(clockMinute(window.from) + lengthOf(window) - minutes) }));
}

/** Each stretch ended so many minutes later, at most a day long. */
export function endedLater(windows: readonly ClockWindow[], minutes: number): ClockWindow[] {
  return windows.map((window) => {
    const length = Math.min(DAY - 1, lengthOf(window) + minutes);
    return { ...window, to: clockAt(clockMinute(window.from) + length) };
  });
}

/** What is left of stretches without part of the night, from before midnight to after it. */
export function withoutNight(windows: readonly ClockWindow[], from: number, to: number): ClockWindow[] {
  return windows.flatMap((window) => {
    const start = clockMinute(window.from);
    const end = start + lengthOf(window);
    const pieces: [number, number][] = [];
    // Nights that a stretch of up to a day can meet: the one before it, and the two that follow.
    let at = start;
    for (const night of [
      [from - DAY, to],
      [from, to + DAY],
      [from + DAY, to + 2 * DAY],
    ] as const) {
      if (night[0] > at) pieces.push([at, Math.min(end, night[0])]);
      at = Math.max(at, Math.min(end, night[1]));
    }
    if (end > at) pieces.push([at, end]);
    return (
      pieces
        .filter(([a, b]) => b > a)
        // A piece that begins after midnight belongs to the weekday after: of stretches on named days only the evening's piece is kept.
        .filter(([a]) => window.days === undefined || a < DAY)
        .map(([a, b]) => ({
          ...window,
          from: clockAt(a % DAY),
          to: clockAt(b - a >= DAY ? (a % DAY) + DAY : b % DAY || DAY),
        }))
    );
  });
}

/** "10:00–11:30, 18:00–20:00" */
export function windowsWords(windows: readonly ClockWindow[]): string {
  return windows.map(({ from, to }) => `${from}–${to}`).join(", ");
}

/** "1 h 50 min", "30 min" */
export function durationWords(minutes: number): string {
  const [h, min] = [Math.floor(minutes / 60), minutes % 60];
  return [h > 0 ? `${h} h` : "", min > 0 ? `${min} min` : ""].filter((part) => part !== "").join(" ");
}
