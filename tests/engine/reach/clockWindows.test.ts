import { expect, test } from "vitest";
import {
  clockAt,
  durationWords,
  endedEarlier,
  endedLater,
  lengthOf,
  windowsWords,
  withoutNight,
} from "../../../engine/reach/clockWindows.ts";
import { type ClockWindow, hoursIn, windowShare } from "../../../engine/scenario/clockWindow.ts";
import { timeGrid } from "../../../engine/scenario/timeGrid.ts";

const times = timeGrid({ start: "2026-06-08T00:00", end: "2026-06-15T00:00", stepMinutes: 10 }, "Etc/UTC");
if (!times.ok) throw new Error(times.problems[0]!.message);
const { grid } = times;

const WINDOWS: ClockWindow[][] = [
  [{ from: "10:00", to: "20:00" }],
  [{ from: "00:00", to: "24:00" }],
  [{ from: "20:00", to: "04:00" }],
  [{ from: "23:00", to: "22:00" }],
  [
    { from: "05:00", to: "07:30" },
    { from: "18:00", to: "23:10" },
  ],
  [{ from: "21:00", to: "21:30" }],
  [{ from: "22:30", to: "05:30" }],
];

test("the night taken out of any stretch leaves each step that is in the stretch and not in the night", () => {
  const night = windowShare(grid, [{ from: "22:00", to: "06:00" }]);
  for (const windows of WINDOWS) {
    const before = windowShare(grid, windows);
    const left = withoutNight(windows, 22 * 60, 6 * 60);
    const after = left.length === 0 ? new Float64Array(grid.steps) : windowShare(grid, left);
    const wanted = before.map((share, i) => (night[i]! > 0 ? 0 : share));
    expect([windowsWords(windows), Array.from(after)]).toEqual([windowsWords(windows), Array.from(wanted)]);
  }
});

test("a stretch ends earlier or later by what is said, past midnight too, and never gains a second day", () => {
  expect(endedEarlier([{ from: "10:00", to: "20:00" }], 510)).toEqual([{ from: "10:00", to: "11:30" }]);
  expect(endedEarlier([{ from: "20:00", to: "02:00" }], 180)).toEqual([{ from: "20:00", to: "23:00" }]);
  expect(endedEarlier([{ from: "20:00", to: "02:00" }], 360)).toEqual([]);
  expect(endedLater([{ from: "20:00", to: "23:00" }], 120)).toEqual([{ from: "20:00", to: "01:00" }]);
  const [whole] = endedLater([{ from: "08:00", to: "07:00" }], 600);
  expect(lengthOf(whole!)).toBe(1439);
});

test("hours are those of the event", () => {
  expect(hoursIn(grid, [{ from: "10:00", to: "20:00" }])).toBeCloseTo(70, 9);
  expect(hoursIn(grid, [{ from: "10:00", to: "12:00", days: ["mon", "sun"] }])).toBeCloseTo(4, 9);
});

test("the clock and lengths in words", () => {
  expect([clockAt(570), clockAt(1440), clockAt(1500)]).toEqual(["09:30", "24:00", "01:00"]);
  expect([durationWords(110), durationWords(60), durationWords(30)]).toEqual(["1 h 50 min", "1 h", "30 min"]);
});
