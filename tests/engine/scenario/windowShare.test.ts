import { expect, test } from "vitest";
import { type ClockWindow, windowShare } from "../../../engine/scenario/clockWindow.ts";
import { timeGrid } from "../../../engine/scenario/timeGrid.ts";

function grid(start: string, end: string, stepMinutes: number, zone = "UTC") {
  const result = timeGrid({ start, end, stepMinutes }, zone);
  if (!result.ok) throw new Error(result.problems[0]!.message);
  return result.grid;
}

/** Hours that a stretch covers between two times. */
function hours(windows: ClockWindow[], start: string, end: string, stepMinutes = 10, zone = "UTC"): number {
  const laid = grid(start, end, stepMinutes, zone);
  return windowShare(laid, windows).reduce((sum, share) => sum + share, 0) * laid.stepH;
}

const DAY = ["2026-10-08T00:00", "2026-10-09T00:00"] as const; // a Thursday

test("a stretch lasts as long as its clock says", () => {
  expect(hours([{ from: "09:00", to: "17:30" }], ...DAY)).toBeCloseTo(8.5, 9);
  expect(hours([{ from: "00:00", to: "24:00" }], ...DAY)).toBeCloseTo(24, 9);
});

test("one that ends before it starts runs past midnight, into the day and out of it", () => {
  expect(hours([{ from: "22:00", to: "02:00" }], ...DAY)).toBeCloseTo(4, 9);
  const laid = grid(...DAY, 60);
  const inside = Array.from(windowShare(laid, [{ from: "22:00", to: "02:00" }]));
  expect(inside.flatMap((share, hour) => (share > 0 ? [hour] : []))).toEqual([0, 1, 22, 23]);
});

test("its weekday is the one on which it begins", () => {
  const friday: ClockWindow = { from: "22:00", to: "02:00", days: ["fri"] };
  expect(hours([friday], ...DAY)).toBe(0);
  expect(hours([friday], "2026-10-09T00:00", "2026-10-10T00:00")).toBeCloseTo(2, 9);
  expect(hours([friday], "2026-10-10T00:00", "2026-10-11T00:00")).toBeCloseTo(2, 9); // Friday's, on Saturday morning
});

test("stretches that overlap count once, and no step length favours anybody", () => {
  const windows: ClockWindow[] = [
    { from: "09:05", to: "11:00" },
    { from: "10:00", to: "12:10" },
  ];
  const within = [{ from: "09:05", to: "12:10" }];
  for (const stepMinutes of [1, 5, 10, 30, 60]) {
    expect(hours(within, ...DAY, stepMinutes)).toBeCloseTo(3 + 5 / 60, 9);
    expect(hours(windows, ...DAY, stepMinutes)).toBeCloseTo(3 + 5 / 60, 9);
    expect(hours([...windows].reverse(), ...DAY, stepMinutes)).toBeCloseTo(3 + 5 / 60, 9);
  }
  const halves: ClockWindow[] = [
    { from: "09:00", to: "09:30" },
    { from: "09:15", to: "09:45" },
  ];
  expect(hours(halves, ...DAY, 60)).toBeCloseTo(0.75, 9);
});

test("on the day of 25 hours a stretch over the doubled hour lasts an hour longer", () => {
  const night: ClockWindow[] = [{ from: "01:00", to: "04:00" }];
  expect(hours(night, "2026-10-25T00:00", "2026-10-26T00:00", 10, "Europe/Vienna")).toBeCloseTo(4, 9);
  expect(hours(night, "2026-03-29T00:00", "2026-03-30T00:00", 10, "Europe/Vienna")).toBeCloseTo(2, 9);
});

test("no stretch at all is never", () => {
  expect(hours([], ...DAY)).toBe(0);
});
