import { expect, test } from "vitest";
import { timeScale } from "../../engine/drawing/timeScale.ts";
import { rulerHours } from "../../engine/ruler/ruler.ts";
import { clockAt, dateSpan, offsetName } from "../../engine/ruler/rulerClock.ts";
import { rulerOf } from "../../engine/ruler/rulerOf.ts";
import { localMoment } from "../../engine/run/localClock.ts";
import { timeGrid } from "../../engine/scenario/index.ts";

const HOUR_MS = 3_600_000;
const autumn = rulerOf(["2026-10-24", "2026-10-25", "2026-10-26"], "Europe/Vienna");
const spring = rulerOf(["2026-03-28", "2026-03-29"], "Europe/Vienna");

// Directive 2000/84/EC, articles 2 and 3: summer time runs from the last Sunday in March to the last Sunday in October, and both
// changes happen at 01:00 universal time. In 2026 those Sundays are 29 March and 25 October.
test("the day on which clocks go back has 25 hours, and its column is wider by one", () => {
  const hours = autumn.days.map((day) => (day.endMs - day.startMs) / HOUR_MS);
  expect(hours).toEqual([24, 25, 24]);
  expect(autumn.offsets.map((offset) => offset.offsetMs / HOUR_MS)).toEqual([2, 1]);
  expect(autumn.offsets[1]!.fromMs).toBe(Date.UTC(2026, 9, 25, 1));
  const scale = timeScale(autumn, null);
  expect(scale.x(autumn.days[1]!.endMs) - scale.x(autumn.days[1]!.startMs)).toBeCloseTo(25 * 9, 9);
  expect(scale.widthPx).toBeCloseTo(73 * 9, 9);
});

test("the day on which clocks go forward has 23 hours, and its noon stands where 12 is written", () => {
  expect(rulerHours(spring)).toBe(47);
  expect(spring.offsets[1]!.fromMs).toBe(Date.UTC(2026, 2, 29, 1));
  const noon = spring.days[1]!.marks.find((mark) => mark.hour === 12)!;
  expect(noon.ms).toBe(Date.UTC(2026, 2, 29, 10));
  expect(clockAt(spring, noon.ms)).toMatchObject({ day: "Sun 29", clock: "12:00" });
  expect(spring.days[1]!.hoursMs).toHaveLength(22);
});

test("the hour that happens twice is read as two different times", () => {
  const first = clockAt(autumn, Date.UTC(2026, 9, 25, 0, 30));
  const second = clockAt(autumn, Date.UTC(2026, 9, 25, 1, 30));
  expect([first.clock, second.clock]).toEqual(["02:30 UTC+2", "02:30 UTC+1"]);
});

test("the page's clock is the engine's clock, through a change of clocks", () => {
  const times = { start: "2026-10-24T20:00", end: "2026-10-26T09:00", stepMinutes: 10 };
  const laid = timeGrid(times, "Europe/Vienna");
  if (!laid.ok) throw new Error("lays");
  for (let i = 0; i < laid.grid.steps; i++) {
    const ms = laid.grid.middleMs[i]!;
    expect(clockAt(autumn, ms).clock.slice(0, 5)).toBe(localMoment(laid.grid, ms).clock);
  }
});

test("four days have 9 px to the hour; other lengths keep whole columns; a phone never shrinks", () => {
  const days = ["08", "09", "10", "11"].map((day) => `2026-10-${day}`);
  const four = rulerOf(days, "Europe/Vienna");
  expect(timeScale(four, 864).pxPerHour).toBe(9);
  expect(timeScale(four, null).pxPerHour).toBe(9);
  expect(timeScale(rulerOf(days.slice(0, 2), "Europe/Vienna"), 864).pxPerHour).toBe(18);
  const month = rulerOf(
    Array.from({ length: 30 }, (_, i) => `2026-06-${String(i + 1).padStart(2, "0")}`),
    "Europe/Vienna",
  );
  expect(timeScale(month, 864).pxPerHour).toBe(3);
});

test("dates and offsets in words", () => {
  expect(dateSpan(autumn)).toBe("Sat 24 to Mon 26 October 2026");
  expect(dateSpan(rulerOf(["2026-12-31", "2027-01-01"], "UTC"))).toBe("Thu 31 December 2026 to Fri 1 January 2027");
  expect(offsetName(-3.5 * HOUR_MS)).toBe("UTC−3:30");
});
