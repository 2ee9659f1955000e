import { expect, test } from "vitest";
import { readReadings } from "../../../engine/learn/readReadings.ts";
import { timeGrid } from "../../../engine/scenario/timeGrid.ts";

function gridOf(start: string, end: string) {
  const made = timeGrid({ start, end, stepMinutes: 30 }, "Europe/Vienna");
  if (!made.ok) throw new Error("the test's own times are wrong");
  return made.grid;
}
const JULY = gridOf("2026-07-10T10:00", "2026-07-12T10:00");

const said = (readings: unknown, grid = JULY) => {
  const read = readReadings({ format: "duskline-readings", version: 1, readings }, grid);
  return read.ok ? [] : read.problems.map(({ message }) => message);
};

test("readings come back in the order of the clock, each at its place between the steps", () => {
  const text = JSON.stringify({
    format: "duskline-readings",
    version: 1,
    readings: [
      { at: "2026-07-11T10:15", chargeShare: 0.5, by: "Kim (invented)", enteredAt: "2026-07-11T10:16" },
      { at: "2026-07-10T10:00", restV: 13.3 },
    ],
  });
  const read = readReadings(text, JULY);
  expect(read.ok && read.readings.map(({ number, place }) => [number, place])).toEqual([
    [1, 0],
    [0, 48.5],
  ]);
});

// Each fault is one sentence that names the field, what was found and what to do.
test.each([
  [[{ at: "2026-07-10T09:59", chargeShare: 0.5 }], "before the event starts"],
  [[{ at: "2026-07-12T10:01", chargeShare: 0.5 }], "after the event ends"],
  [[{ at: "2026-07-32T10:00", chargeShare: 0.5 }], "no date of the calendar"],
  [[{ at: "yesterday", chargeShare: 0.5 }], 'a local time such as "2026-10-09T18:30"'],
  [[{ at: "2026-07-11T10:00", chargeShare: 50 }], "a number from 0 to 1 (charge of the bank, as a share of 1)"],
  [[{ at: "2026-07-11T10:00", chargeShare: 0.5, restV: 13 }], "in more than one way"],
  [[{ at: "2026-07-11T10:00", by: "Kim (invented)" }], "holds nothing that was read"],
  [[{ at: "2026-07-11T10:00", panelsW: 30, errorShare: 0.1 }], "an error belongs to chargeShare or outAh"],
  [[{ at: "2026-07-11T10:00", sky: { date: "2026-07-12", word: "fair" } }], "comes after the reading"],
  [[{ at: "2026-07-11T10:00", sky: { date: "2026-07-09", word: "fair" } }], "no day of the event"],
  [[{ at: "2026-07-11T10:00", chargeshare: 0.5 }], "did you mean chargeShare?"],
  [{}, "a list of readings"],
])("%j is refused: %s", (readings, words) => {
  const messages = said(readings);
  expect(messages.length).toBeGreaterThan(0);
  expect(messages.join(" ")).toContain(words);
  for (const message of messages) expect(message).toMatch(/[.?]$/);
});

test("an hour that the clocks skip is refused, one that comes twice means the first time", () => {
  const spring = gridOf("2026-03-28T10:00", "2026-03-30T10:00");
  expect(said([{ at: "2026-03-29T02:30", chargeShare: 0.5 }], spring).join()).toContain("an hour that the clocks skip");
  const autumn = gridOf("2026-10-24T10:00", "2026-10-26T10:00");
  const read = readReadings(
    { format: "duskline-readings", version: 1, readings: [{ at: "2026-10-25T02:30", chargeShare: 0.5 }] },
    autumn,
  );
  expect(read.ok && read.readings[0]!.place).toBe(33); // 16.5 h on
});

test("what is no JSON, another document, or too long a list is refused in a sentence", () => {
  expect(readReadings("{", JULY)).toMatchObject({ ok: false, problems: [{ code: "not-json" }] });
  expect(readReadings({ format: "duskline-scenario" }, JULY).ok).toBe(false);
  expect(said(Array.from({ length: 2001 }, () => ({ at: "2026-07-11T10:00", chargeShare: 0.5 }))).join()).toContain(
    "at most 2000",
  );
});
