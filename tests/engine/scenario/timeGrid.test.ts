import { describe, expect, test } from "vitest";
import { type TimeGrid, timeGrid } from "../../../engine/scenario/timeGrid.ts";

function grid(start: string, end: string, zone: string, stepMinutes = 60): TimeGrid {
  const result = timeGrid({ start, end, stepMinutes }, zone);
  if (!result.ok) throw new Error(result.problems[0]!.message);
  return result.grid;
}

const hoursOf = (laid: TimeGrid) =>
  laid.dates.map((_, day) => laid.localDay.filter((each) => each === day).length * laid.stepH);

describe("days when clocks change", () => {
  // The rules are the zones' own laws. EU: forward on the last Sunday of March, back on that of October, at 01:00 UTC
  // (Directive 2000/84/EC). US: second Sunday of March, first of November (Energy Policy Act of 2005). New South Wales:
  // first Sunday of April and of October (Standard Time Act 1987), Lord Howe by half an hour.
  test.each([
    ["Europe/Vienna", "2026-10-24T00:00", "2026-10-27T00:00", [24, 25, 24]],
    ["Europe/Vienna", "2026-03-28T00:00", "2026-03-31T00:00", [24, 23, 24]],
    ["America/Denver", "2026-11-01T00:00", "2026-11-02T00:00", [25]],
    ["America/Denver", "2026-03-08T00:00", "2026-03-09T00:00", [23]],
    ["America/Phoenix", "2026-03-08T00:00", "2026-03-09T00:00", [24]],
    ["Australia/Sydney", "2026-04-05T00:00", "2026-04-06T00:00", [25]],
    ["Australia/Sydney", "2026-10-04T00:00", "2026-10-05T00:00", [23]],
  ])("%s from %s to %s", (zone, start, end, hours) => {
    expect(hoursOf(grid(start, end, zone))).toEqual(hours);
  });

  test("a change of half an hour gives a day of 23.5 and 24.5 hours", () => {
    expect(hoursOf(grid("2026-10-04T00:00", "2026-10-05T00:00", "Australia/Lord_Howe", 30))).toEqual([23.5]);
    expect(hoursOf(grid("2026-04-05T00:00", "2026-04-06T00:00", "Australia/Lord_Howe", 30))).toEqual([24.5]);
  });

  test("the hour that comes twice is met twice, and the one that is skipped never", () => {
    const back = grid("2026-10-25T00:00", "2026-10-25T06:00", "Europe/Vienna");
    expect(Array.from(back.localMinute)).toEqual([30, 90, 150, 150, 210, 270, 330]);
    const forward = grid("2026-03-29T00:00", "2026-03-29T06:00", "Europe/Vienna");
    expect(Array.from(forward.localMinute)).toEqual([30, 90, 210, 270, 330]);
  });
});

test("universal time runs evenly and the local clock stands beside it", () => {
  const laid = grid("2026-10-08T10:00", "2026-10-09T10:00", "Asia/Kathmandu", 15);
  expect(laid.startMs).toBe(Date.UTC(2026, 9, 8, 4, 15)); // Nepal is 5 h 45 min ahead
  expect(laid.steps).toBe(96);
  expect(laid.middleMs[1]! - laid.middleMs[0]!).toBe(900_000);
  expect(laid.localMinute[0]).toBe(607.5);
  expect(laid.dates).toEqual(["2026-10-08", "2026-10-09"]);
  expect(laid.localDay[55]).toBe(0);
  expect(laid.localDay[56]).toBe(1);
});

test("weekdays count from Monday: 8 October 2026 is a Thursday", () => {
  const laid = grid("2026-10-08T00:00", "2026-10-13T00:00", "UTC");
  const first = laid.dates.map((_, day) => laid.localWeekday[laid.localDay.indexOf(day)]);
  expect(first).toEqual([3, 4, 5, 6, 0]);
});

test("before 1970 and far from Greenwich the weekday is right as well: 20 July 1969 was a Sunday", () => {
  const laid = grid("1969-07-20T12:00", "1969-07-21T12:00", "Pacific/Auckland");
  expect(laid.dates).toEqual(["1969-07-20", "1969-07-21"]);
  expect([laid.localWeekday[0], laid.localWeekday.at(-1)]).toEqual([6, 0]);
});

test("a last step that the end cuts is whole, so that the end is never short", () => {
  const laid = grid("2026-10-08T10:00", "2026-10-08T10:50", "UTC", 20);
  expect(laid.steps).toBe(3);
});
