import fc from "fast-check";
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

describe("days that own steps and days of the calendar are one list", () => {
  test.each([
    ["2026-10-08T23:54", 10],
    ["2026-10-08T23:55", 10],
    ["2026-10-08T23:59", 10],
    ["2026-10-08T23:30", 60],
    ["2026-10-08T23:31", 60],
  ])(
    "a start at %s in steps of %d minutes has a first step on its own day, though its middle is on the next",
    (start, step) => {
      const laid = grid(start, "2026-10-10T12:00", "Europe/Vienna", step);
      expect(laid.dates).toEqual(["2026-10-08", "2026-10-09", "2026-10-10"]);
      expect(laid.localDay.indexOf(0)).toBe(0);
      expect(laid.localDay.indexOf(1)).toBe(1);
      expect(laid.localWeekday[0]).toBe(3); // a Thursday
      expect(laid.startMinute).toBe(Number(start.slice(11, 13)) * 60 + Number(start.slice(14)));
      expect(laid.localMinute[0]).toBe(laid.startMinute + step / 2);
    },
  );

  test("a day that has begun stays begun where clocks are put back over midnight: Newfoundland, 7 November 2010, from 00:01 to 23:01", () => {
    const laid = grid("2010-11-06T22:00", "2010-11-07T02:00", "America/St_Johns", 1);
    expect(laid.steps).toBe(300);
    expect(laid.dates).toEqual(["2010-11-06", "2010-11-07"]);
    expect(laid.localDay.indexOf(1)).toBe(120); // 24:00
    expect(laid.localDay.lastIndexOf(0)).toBe(119);
    expect(laid.localMinute[120]).toBe(0.5);
    expect(laid.localMinute[121]).toBe(-58.5); // 23:01:30, on the clock of the day before
    expect(laid.localMinute[180]).toBe(0.5);
  });

  test("a date that a zone skips is no day of the event: Samoa had no 30 December 2011", () => {
    const laid = grid("2011-12-29T22:00", "2011-12-31T02:00", "Pacific/Apia");
    expect(laid.steps).toBe(4);
    expect(laid.dates).toEqual(["2011-12-29", "2011-12-31"]);
    expect(Array.from(laid.localDay)).toEqual([0, 0, 1, 1]);
    expect(Array.from(laid.localWeekday)).toEqual([3, 3, 5, 5]);
  });

  const ZONES = [
    "Europe/Vienna",
    "America/Havana",
    "Asia/Beirut",
    "America/Nuuk",
    "Australia/Lord_Howe",
    "Asia/Kathmandu",
  ];
  test("wherever and whenever, each date is that of a step's beginning by the zone's own clock", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ZONES),
        fc.integer({ min: 0, max: 2 * 365 * 1440 }),
        fc.integer({ min: 1, max: 5000 }),
        fc.constantFrom(1, 3, 10, 12, 20, 30, 60),
        (zone, fromMinute, minutes, stepMinutes) => {
          const local = (minute: number) => new Date(Date.UTC(2025, 0, 1) + minute * 60_000).toISOString().slice(0, 16);
          const result = timeGrid({ start: local(fromMinute), end: local(fromMinute + minutes), stepMinutes }, zone);
          fc.pre(result.ok);
          if (!result.ok) return;
          const laid = result.grid;
          const date = new Intl.DateTimeFormat("en-CA", {
            timeZone: zone,
            year: "numeric",
            month: "2-digit",
            day: "2-digit",
          });
          let day = 0;
          for (let i = 0; i < laid.steps; i++) {
            const is = laid.localDay[i]!;
            expect(is === day || is === day + 1).toBe(true);
            day = is;
            expect(laid.dates[is]).toBe(date.format(laid.startMs + i * laid.stepMs));
          }
          expect(laid.localDay[0]).toBe(0);
          expect(laid.dates).toHaveLength(day + 1);
          expect(laid.dates[0]).toBe(local(fromMinute).slice(0, 10));
        },
      ),
      { numRuns: 60, seed: 20261130 },
    );
  });
});
