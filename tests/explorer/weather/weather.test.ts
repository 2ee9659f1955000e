import { describe, expect, test } from "vitest";
import { makeSurroundings } from "../../../engine/answers/makeSurroundings.ts";
import { readNotebook } from "../../../engine/notebook/readNotebook.ts";
import { scenarioDocument } from "../../../engine/notebook/scenarioDocument.ts";
import { readWeatherFile, type WeatherFile } from "../../../engine/place/index.ts";
import { trace } from "../../../engine/run/trace.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { withScenarioFile, withWeatherFile } from "../../../explorer/page/takeIntoNotebook.ts";
import { keptWeather } from "../../../explorer/weather/keptWeather.ts";
import { weatherCsv } from "../../../explorer/weather/weatherCsv.ts";
import { EXAMPLE } from "../exampleRun.ts";

const HOUR_MS = 3_600_000;
const { latitudeDeg, longitudeDeg } = EXAMPLE.place;

/** An invented table of hours, on a clock one hour ahead of UTC; the sun is a plain half wave. */
function table(firstDay: string, days: number, place = `${latitudeDeg}`): string {
  const lines = [`# latitude: ${place}`, `# longitude: ${longitudeDeg}`, "# utcOffset: 1", "time,ghi,temp_c"];
  for (let hour = 0; hour < days * 24; hour++) {
    const clock = new Date(Date.parse(`${firstDay}T00:00Z`) + hour * HOUR_MS).toISOString().slice(0, 16);
    const ghi = Math.max(0, 500 * Math.sin(((hour % 24) - 6) * (Math.PI / 12)));
    lines.push(`${clock},${ghi.toFixed(1)},${(hour % 24) / 2}`);
  }
  return lines.join("\n");
}
const fileOf = (text: string): WeatherFile => {
  const read = readWeatherFile(text, "table.csv");
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.file;
};
const eventYear = Number(EXAMPLE.time.start.slice(0, 4));

describe("a weather file in a notebook", () => {
  test("holds hour by hour what the file held", () => {
    const file = fileOf(table(`${eventYear}-09-01`, 60));
    const again = fileOf(weatherCsv(file, 0, file.startMs.length));
    expect([...again.startMs]).toEqual([...file.startMs]);
    expect([...again.ghiWm2]).toEqual([...file.ghiWm2]);
    expect([...again.tempC!]).toEqual([...file.tempC!]);
    expect(again).toMatchObject({ latitudeDeg, utcOffsetH: 1, stepMinutes: 60 });
    const part = fileOf(weatherCsv(file, 24, 48));
    expect([...part.startMs]).toEqual([...file.startMs.slice(24, 48)]);
  });

  test("says what years and how far, and what it left out", () => {
    const near = keptWeather(table(`${eventYear}-09-01`, 60), "Our meadow 1.csv", EXAMPLE);
    if (!near.ok) throw new Error(near.sentences[0]);
    expect(near.name).toMatch(/^our-meadow-1-[a-z0-9]{4}\.csv$/);
    expect(near.sentences[0]).toContain(`hour by hour from ${eventYear}-09-01 to ${eventYear}-10-30`);
    expect(near.sentences[0]).toMatch(/for a place 0\u202fkm from/);
    // A degree of latitude is 111 km (mean meridian arc, 10,002 km over 90°); ten of them are far.
    const far = keptWeather(table(`${eventYear}-09-01`, 60, `${latitudeDeg - 10}`), "far.csv", EXAMPLE);
    expect(far.sentences[0]).toMatch(/place 1\u202f11\d\u202fkm from .*, farther than the 150\u202fkm/);
  });

  test("keeps the season of the event when it is too long to be kept whole", () => {
    const kept = keptWeather(table(`${eventYear - 3}-01-01`, 4 * 365), "long.csv", EXAMPLE);
    if (!kept.ok) throw new Error(kept.sentences[0]);
    const file = fileOf(kept.text);
    const event = Date.parse(`${EXAMPLE.time.start.slice(0, 10)}T12:00Z`);
    expect(file.startMs.length).toBe(16_000);
    expect(file.startMs[0]!).toBeLessThan(event);
    expect(file.startMs.at(-1)!).toBeGreaterThan(event);
    expect(kept.sentences[0]).toContain("Of 35\u202f040 intervals it keeps the 16\u202f000");
  });

  test("another text has another name, so that no result is taken for another's", () => {
    const names = [60, 61].map((days) => {
      const kept = keptWeather(table(`${eventYear}-09-01`, days), "same.csv", EXAMPLE);
      return kept.ok ? kept.name : "";
    });
    expect(names[0]).not.toBe(names[1]);
  });

  test("is what its scenario runs under, and goes along in the notebook's file", async () => {
    const example = exampleNotebook("example");
    const taken = withWeatherFile(example, "meadow", table(`${eventYear}-09-01`, 60), "meadow.csv");
    const read = readNotebook(JSON.stringify(taken.notebook));
    if (!read.ok) throw new Error(read.sentences[0]);
    const document = (id: string): ScenarioInput => {
      const found = scenarioDocument(read.notebook, id);
      if (!found.ok) throw new Error(found.sentence);
      return found.document;
    };
    expect(document("roof").weather.kind).toBe("typical");
    const scenario = readScenario(document("meadow"));
    if (!scenario.ok) throw new Error(scenario.problems[0]!.message);
    const run = trace(scenario.scenario, await makeSurroundings()(scenario.scenario, read.notebook.weatherFiles!));
    if (!run.ok) throw new Error(run.problems[0]!.message);
    const without = trace(scenario.scenario, await makeSurroundings()(scenario.scenario, []));
    expect(!without.ok && without.problems[0]!.code).toBe("no-weather-file");
    // A second file in its place sends the first away.
    const second = withWeatherFile(read.notebook, "meadow", table(`${eventYear}-09-01`, 61), "meadow.csv");
    expect(second.notebook!.weatherFiles).toHaveLength(1);
  });

  test("that is none is refused with its line", () => {
    const taken = withWeatherFile(exampleNotebook("example"), "roof", "time,ghi\n2026-10-01T00:00Z,many\n", "odd.csv");
    expect(taken.notebook).toBeNull();
    expect(taken.sentences.join(" ")).toMatch(/odd\.csv is not taken in\. Line 2: GHI is "many"/);
  });
});

test("a scenario file becomes one more scenario of the notebook, its variants based on it", () => {
  const example = exampleNotebook("example");
  const taken = withScenarioFile(example, JSON.stringify(EXAMPLE), "walnut.json");
  const next = taken.notebook!;
  expect(next.scenarios.length).toBe(example.scenarios.length + 1 + EXAMPLE.variants!.length);
  expect(readNotebook(JSON.stringify(next)).ok).toBe(true);
  for (const { id } of next.scenarios) expect(scenarioDocument(next, id).ok).toBe(true);
  expect(next.entries.at(-1)!.kind).toBe("scenario");
  expect(withScenarioFile(example, '{"format":"duskline-scenario"}', "bare.json").notebook).toBeNull();
});
