import { expect, test } from "vitest";
import { seedWords } from "../../../engine/chance/stream.ts";
import type { WeatherFile } from "../../../engine/place/weatherFile.ts";
import { clearSky } from "../../../engine/sky/clearSky.ts";
import { drawSky, type PreparedSkies, prepareBlockSkies } from "../../../engine/sky/skyEnsemble.ts";
import { makeSkyLight } from "../../../engine/sky/splitDiffuse.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";
import { skyEvent } from "./skyEvent.ts";

const HOUR_MS = 3_600_000;
const event = skyEvent({ start: "2026-06-19T14:00", end: "2026-06-24T11:00" });
const { latitudeDeg, longitudeDeg, elevationM } = event.site;

/** Invented: `years` Junes of hours in which day k of a June is a cloudless sky times an index, and the air is the day's number. */
function junes(years: number, indexOf: (day: number) => number, days = 30): WeatherFile {
  const startMs = Float64Array.from({ length: years * days * 24 }, (_, k) => {
    const hour = k % (days * 24);
    return Date.UTC(2001 + Math.floor(k / (days * 24)), 5, 1, 7) + hour * HOUR_MS;
  });
  const middleMs = startMs.map((start) => start + HOUR_MS / 2);
  const sun = sunTrack(latitudeDeg, longitudeDeg, middleMs);
  const { ghiWm2 } = clearSky(sun, middleMs, longitudeDeg, elevationM, 3);
  const dayOf = (k: number) => Math.floor((k % (days * 24)) / 24);
  return {
    format: "csv",
    latitudeDeg,
    longitudeDeg,
    elevationM,
    utcOffsetH: -7,
    stepMinutes: 60,
    startMs,
    typicalYear: false,
    ghiWm2: ghiWm2.map((clear, k) => clear * indexOf(dayOf(k))),
    dniWm2: null,
    dhiWm2: null,
    tempC: Float64Array.from(startMs, (_, k) => dayOf(k)),
    windMs: null,
    notes: [],
  };
}
function skiesOf(file: WeatherFile): PreparedSkies {
  const found = prepareBlockSkies({ ...event, file });
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.skies;
}
function member(skies: PreparedSkies, number: number) {
  const light = makeSkyLight(event.grid.steps);
  const airTempC = new Float64Array(event.grid.steps);
  drawSky(skies, seedWords("blocks"), number, light, airTempC);
  return { light, airTempC };
}

test("days come from the file in runs of two to five, light and air together", () => {
  const skies = skiesOf(junes(3, (day) => 0.2 + day / 50));
  const runs: number[] = [];
  const seen = new Set<number>();
  for (let number = 0; number < 400; number++) {
    const { airTempC } = member(skies, number);
    const noon = [0, 1, 2, 3].map((day) => {
      const at = event.grid.localDay.findIndex((local, i) => local === day + 1 && event.grid.localMinute[i]! > 600);
      return Math.round(airTempC[at]!);
    });
    noon.forEach((day, k) => {
      seen.add(day);
      // The index of the day that the air says it is.
      expect(skies.indexOfDay[k + 1]!).toBeCloseTo(0.2 + day / 50, 1);
    });
    let run = 1;
    for (let k = 1; k < 4; k++) {
      if (noon[k] === noon[k - 1]! + 1) run++;
      else {
        runs.push(run);
        run = 1;
      }
    }
  }
  expect(seen.size).toBe(30);
  expect(runs.length).toBeGreaterThan(200);
});

test("a file of cloudless days gives the event's own cloudless sky", () => {
  const { light } = member(skiesOf(junes(1, () => 1)), 0);
  let [got, wanted] = [0, 0];
  event.clear.ghiWm2.forEach((clear, i) => {
    got += light.ghiWm2[i]!;
    wanted += clear;
  });
  expect(Math.abs(got / wanted - 1)).toBeLessThan(0.005);
});

test("each member is the same each time, and members differ", () => {
  const skies = skiesOf(junes(2, (day) => 0.2 + (day % 7) / 10));
  const third = member(skies, 3);
  member(skies, 4);
  expect(member(skies, 3)).toEqual(third);
  expect(member(skies, 5).airTempC).not.toEqual(third.airTempC);
});

test("what a day remembers of the one before is not lost at the joins", () => {
  // A slow wave of bright and dull days, 15 days long: neighbours differ by 0.1 on average, strangers by 0.25.
  const skies = skiesOf(junes(8, (day) => 0.6 + 0.3 * Math.sin((2 * Math.PI * day) / 15)));
  let [steps, strangers, n] = [0, 0, 0];
  let before = 0.6;
  for (let number = 0; number < 600; number++) {
    member(skies, number);
    for (let day = 1; day < 6; day++) {
      steps += Math.abs(skies.indexOfDay[day]! - skies.indexOfDay[day - 1]!);
      strangers += Math.abs(skies.indexOfDay[day]! - before);
      n++;
    }
    before = skies.indexOfDay[0]!;
  }
  expect(steps / n).toBeLessThan(0.6 * (strangers / n));
});

test("a file with too few days of the season, or no temperature anywhere, is refused in a sentence", () => {
  const few = prepareBlockSkies({ ...event, file: junes(1, () => 1, 6) });
  expect(few.ok).toBe(false);
  if (!few.ok) expect(few.problems[0]!.message).toMatch(/holds 6 whole days .* at least 10; load a file/);
  const cold = prepareBlockSkies({ ...event, file: { ...junes(1, () => 1), tempC: null } });
  expect(cold.ok).toBe(false);
  if (!cold.ok) expect(cold.problems[0]!.message).toMatch(/no temperature/);
  const twelve = (value: number) => Array.from({ length: 12 }, () => value);
  const typed = prepareBlockSkies({
    ...event,
    file: { ...junes(1, () => 1), tempC: null },
    air: { tmaxC: twelve(25), tminC: twelve(11) },
  });
  expect(typed.ok).toBe(true);
  if (typed.ok) expect(member(typed.skies, 0).airTempC.every((value) => value > -10 && value < 50)).toBe(true);
});
