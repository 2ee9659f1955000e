import type { Problem } from "../scenario/problem.ts";
import { listedProblems } from "../scenario/problemList.ts";
import { problemsFrom } from "../scenario/problemsFrom.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { clockMoments, clockMsOf, zoneOffsetMs } from "../zoneTime.ts";
import { type Reading, Readings } from "./reading.ts";

/** Two thousand readings with a note each; a longer document is something else by mistake. */
const LONGEST_TEXT = 3_000_000;

/** A reading at its place on the time grid. */
export interface PlacedReading {
  readonly reading: Reading;
  /** Where it stands in the document, from 0. */
  readonly number: number;
  /** Steps since the start, with fractions: 0…steps. */
  readonly place: number;
}

export type ReadingsResult =
  | { ok: true; readings: readonly PlacedReading[] }
  | { ok: false; problems: readonly Problem[] };

/**
 * Reads a document of readings and finds each its place in an event. Nothing is thrown for a wrong document: every problem is
 * returned as one sentence.
 * @param source the JSON text, or the value parsed from it
 * @param grid of the scenario they belong to
 * @returns the readings in the order of the clock
 */
export function readReadings(source: unknown, grid: TimeGrid): ReadingsResult {
  let document = source;
  if (typeof source === "string") {
    if (source.length > LONGEST_TEXT) {
      const message = `The readings have ${(source.length / 1e6).toFixed(1)} million characters, and at most 3 million are read; is it the meter's log?`;
      return { ok: false, problems: [{ code: "too-long", path: [], message }] };
    }
    try {
      document = JSON.parse(source) as unknown;
    } catch (error) {
      const message = `The readings are not JSON (${(error as Error).message}); check the comma, quote or bracket there.`;
      return { ok: false, problems: [{ code: "not-json", path: [], message }] };
    }
  }
  const parsed = Readings.safeParse(document);
  if (!parsed.success) return { ok: false, problems: problemsFrom(document, parsed.error, Readings) };
  const found = parsed.data.readings.map((reading, number) => placeOf(reading, number, grid));
  const problems = found.filter((each): each is Problem => "code" in each);
  if (problems.length > 0) return { ok: false, problems: listedProblems(problems) };
  const readings = found as PlacedReading[];
  return { ok: true, readings: readings.sort((a, b) => a.place - b.place || a.number - b.number) };
}

function placeOf(reading: Reading, number: number, grid: TimeGrid): PlacedReading | Problem {
  const name = `readings.${number + 1}.at`;
  const path = ["readings", number, "at"];
  const clockMs = clockMsOf(reading.at);
  if (clockMs === null) {
    const message = `${name} is "${reading.at}", which is no date of the calendar; write it as "2026-10-09T18:30".`;
    return { code: "no-such-date", path, message };
  }
  const { firstMs: ms, isSkipped } = clockMoments(grid.zone, clockMs);
  if (isSkipped) {
    const message = `${name} is "${reading.at}", an hour that the clocks skip in ${grid.zone}; write a time before or after the change of clocks.`;
    return { code: "skipped-hour", path, message };
  }
  const endMs = grid.startMs + grid.steps * grid.stepMs;
  const local = (at: number) => new Date(at + zoneOffsetMs(grid.zone, at)).toISOString().slice(0, 16);
  if (ms < grid.startMs || ms > endMs) {
    const side = ms < grid.startMs ? "before the event starts" : "after the event ends";
    const message = `${name} is "${reading.at}", ${side} (it lasts from ${local(grid.startMs)} to ${local(endMs)}); correct the time, or the scenario's.`;
    return { code: ms < grid.startMs ? "before-start" : "after-end", path, message };
  }
  const { sky } = reading;
  if (sky !== undefined && !grid.dates.includes(sky.date)) {
    const message = `readings.${number + 1}.sky.date is "${sky.date}", no day of the event (${grid.dates[0]} to ${grid.dates.at(-1)}); correct it or take it out.`;
    return { code: "strange-day", path: ["readings", number, "sky", "date"], message };
  }
  return { reading, number, place: (ms - grid.startMs) / grid.stepMs };
}
