import * as z from "zod";
import { ClockTime, clockMinute } from "./clockTime.ts";
import { word } from "./quantity.ts";
import type { TimeGrid } from "./timeGrid.ts";

const WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;

/** A stretch of the local clock, every day or on named weekdays; one that ends before it starts runs past midnight. */
export const ClockWindow = z
  .strictObject(
    {
      from: ClockTime.meta({ label: "From", description: "local time at which it begins" }),
      to: ClockTime.meta({
        label: "To",
        description: "local time at which it ends; earlier than from runs past midnight",
      }),
      days: z
        .array(
          word(WEEKDAYS, "the weekday on which the stretch begins").meta({
            choices: { mon: "Mon", tue: "Tue", wed: "Wed", thu: "Thu", fri: "Fri", sat: "Sat", sun: "Sun" },
          }),
          {
            error: 'a list of weekdays, such as ["fri"]',
          },
        )
        .min(1, { error: "a list with at least one weekday" })
        .optional()
        .meta({ label: "Weekdays", description: "weekdays on which it begins; every day when left out" }),
    },
    { error: 'a stretch of the clock, such as { "from": "09:00", "to": "23:00" }' },
  )
  .meta({
    title: "Stretch of the clock",
    description: "Part of the day by the local clock, every day or on named weekdays.",
  })
  .check(({ value, issues }) => {
    if (value.from === value.to) {
      const message = `it begins and ends at ${value.from}; write "00:00" to "24:00" for the whole day, or leave the stretch out`;
      issues.push({ code: "custom", path: ["to"], input: value.to, message });
    }
  });
export type ClockWindow = z.infer<typeof ClockWindow>;

/** A list of stretches; together they may not be empty. */
export const ClockWindows = z
  .array(ClockWindow, { error: 'a list of stretches of the clock, such as [{ "from": "09:00", "to": "23:00" }]' })
  .max(24, { error: "a list of at most 24 stretches of the clock" });

/** Length of what stretches cover together; where they overlap, the time counts once. Sorts the list. */
function coveredMinutes(stretches: [from: number, to: number][]): number {
  stretches.sort((a, b) => a[0] - b[0]);
  let covered = 0;
  let reached = Number.NEGATIVE_INFINITY;
  for (const [from, to] of stretches) {
    covered += Math.max(0, to - Math.max(from, reached));
    reached = Math.max(reached, to);
  }
  return covered;
}

/**
 * How much of each step lies inside any of the stretches, by the local clock.
 * @returns one share 0…1 per step; a step cut by the edge of a stretch counts in part, so that no step length favours anybody
 */
export function windowShare(grid: TimeGrid, windows: readonly ClockWindow[]): Float64Array {
  const inside = new Float64Array(grid.steps);
  const stepMinutes = grid.stepMs / 60_000;
  for (let i = 0; i < grid.steps; i++) {
    const from = grid.localMinute[i]! - stepMinutes / 2;
    const to = from + stepMinutes;
    const within: [number, number][] = [];
    for (const window of windows) {
      const begins = clockMinute(window.from);
      const ends = clockMinute(window.to);
      const length = ends > begins ? ends - begins : ends + 1440 - begins;
      // A stretch that began yesterday may still run, and a step before midnight may reach into tomorrow's.
      for (const dayShift of [-1, 0, 1]) {
        const weekday = WEEKDAYS[(grid.localWeekday[i]! + dayShift + 7) % 7]!;
        if (window.days !== undefined && !window.days.includes(weekday)) continue;
        const start = begins + dayShift * 1440;
        within.push([Math.max(from, start), Math.min(to, start + length)]);
      }
    }
    inside[i] = Math.min(1, coveredMinutes(within) / stepMinutes);
  }
  return inside;
}

/** Hours of an event that lie inside stretches of the clock. */
export function hoursIn(grid: TimeGrid, windows: readonly ClockWindow[]): number {
  return windowShare(grid, windows).reduce((sum, share) => sum + share, 0) * grid.stepH;
}
