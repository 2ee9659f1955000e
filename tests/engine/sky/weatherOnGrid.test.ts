import { expect, test } from "vitest";
import type { WeatherFile } from "../../../engine/place/weatherFile.ts";
import { clearSky } from "../../../engine/sky/clearSky.ts";
import { dayLight } from "../../../engine/sky/dayClearIndex.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";
import { weatherOnGrid } from "../../../engine/sky/weatherOnGrid.ts";

const HOUR_MS = 3_600_000;

function gridFrom(startMs: number, hours: number, stepMinutes: number) {
  const stepMs = stepMinutes * 60_000;
  const steps = (hours * HOUR_MS) / stepMs;
  const middleMs = Float64Array.from({ length: steps }, (_, i) => startMs + (i + 0.5) * stepMs);
  const clear = clearSky(sunTrack(46.95, 7.45, middleMs), middleMs, 7.45, 540, 3);
  const site = { latitudeDeg: 46.95, longitudeDeg: 7.45, elevationM: 540, linkeTurbidity: 3 };
  const days = dayLight(
    site,
    middleMs,
    Int32Array.from(middleMs, (timeMs) => Math.floor(timeMs / 86_400_000) - Math.floor(middleMs[0]! / 86_400_000)),
  );
  return { grid: { startMs, stepMs, steps, middleMs }, clear, days };
}

/** An invented file: GHI 0.6 of a clear hour, a third of it from the sky, at one hour a line. */
function fileFrom(startMs: number, hours: number, change: Partial<WeatherFile> = {}): WeatherFile {
  const starts = Float64Array.from({ length: hours }, (_, i) => startMs + i * HOUR_MS);
  const { clear } = gridFrom(startMs, hours, 60);
  const ghiWm2 = clear.ghiWm2.map((ghi) => 0.6 * ghi);
  return {
    format: "csv",
    latitudeDeg: 46.95,
    longitudeDeg: 7.45,
    elevationM: 540,
    utcOffsetH: 1,
    stepMinutes: 60,
    startMs: starts,
    typicalYear: false,
    ghiWm2,
    dniWm2: null,
    dhiWm2: null,
    tempC: starts.map((_, i) => i),
    windMs: null,
    notes: [],
    ...change,
  };
}
function laid(file: WeatherFile, on: ReturnType<typeof gridFrom>) {
  const found = weatherOnGrid(file, on.grid, on.clear, on.days);
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.weather;
}
const hourMean = (values: Float64Array, hour: number, perHour: number) =>
  values.subarray(hour * perHour, (hour + 1) * perHour).reduce((a, b) => a + b, 0) / perHour;

const day = Date.UTC(2026, 5, 1);

test("each hour keeps its energy and takes the clear sky's shape, from GHI alone", () => {
  const file = fileFrom(day, 24);
  const on = gridFrom(day, 24, 10);
  const { light } = laid(file, on);
  for (let hour = 0; hour < 24; hour++) expect(hourMean(light.ghiWm2, hour, 6)).toBeCloseTo(file.ghiWm2[hour]!, 9);
  expect(light.ghiWm2[36]!).toBeLessThan(light.ghiWm2[41]!); // morning: rising within the hour
  for (let i = 0; i < on.grid.steps; i++) {
    expect(light.dhiWm2[i]! + light.dniWm2[i]! * on.clear.sinElevation[i]!).toBeCloseTo(light.ghiWm2[i]!, 9);
  }
});

test("measured sky light keeps its energy beside the beam's", () => {
  const plain = fileFrom(day, 24);
  const file = { ...plain, dhiWm2: plain.ghiWm2.map((ghi) => ghi / 3) };
  const { light } = laid(file, gridFrom(day, 24, 10));
  for (let hour = 6; hour < 18; hour++) {
    expect(hourMean(light.ghiWm2, hour, 6)).toBeCloseTo(file.ghiWm2[hour]!, 9);
    expect(hourMean(light.dhiWm2, hour, 6)).toBeCloseTo(file.dhiWm2[hour]!, 9);
  }
});

test("a file with DNI and no DHI gives back its DNI", () => {
  const plain = fileFrom(day, 24);
  const file = { ...plain, dniWm2: plain.ghiWm2.map((ghi) => Math.min(300, ghi)) };
  const { light } = laid(file, gridFrom(day, 24, 10));
  for (let hour = 7; hour < 16; hour++) expect(hourMean(light.dniWm2, hour, 6)).toBeCloseTo(file.dniWm2[hour]!, 6);
});

/** A file of all three whose DNI and DHI add up to `sumShare` of its GHI, sky light a third of GHI, hours with the sun wholly up. */
function allThree(sumShare: number, beamShare = 2 / 3) {
  const plain = fileFrom(day, 24);
  const { clear } = gridFrom(day, 24, 10);
  const level = (hour: number) => {
    const beam = hourMean(
      clear.dniWm2.map((dni, i) => dni * clear.sinElevation[i]!),
      hour,
      6,
    );
    return beam / hourMean(clear.dniWm2, hour, 6);
  };
  const dhiWm2 = plain.ghiWm2.map((ghi) => (sumShare - beamShare) * ghi);
  const dniWm2 = plain.ghiWm2.map((ghi, hour) => (ghi > 0 ? (beamShare * ghi) / level(hour) : 0));
  return { ...plain, dniWm2, dhiWm2 };
}

test.each([0.96, 1, 1.04])(
  "beam and sky light that add up to %d of GHI are both taken as they are, and nothing is said",
  (sumShare) => {
    const file = allThree(sumShare);
    const { light, notes } = laid(file, gridFrom(day, 24, 10));
    expect(notes).toEqual([]);
    for (let hour = 7; hour < 17; hour++) {
      expect(hourMean(light.dniWm2, hour, 6)).toBeCloseTo(file.dniWm2[hour]!, 6);
      expect(hourMean(light.dhiWm2, hour, 6)).toBeCloseTo(file.dhiWm2[hour]!, 6);
      expect(hourMean(light.ghiWm2, hour, 6)).toBeCloseTo(sumShare * file.ghiWm2[hour]!, 6);
    }
  },
);

test.each([0.9, 1.1])(
  "where they add up to %d of GHI the beam stays, the sky gets the rest of GHI, and that is said",
  (sumShare) => {
    const file = allThree(sumShare);
    const { light, notes } = laid(file, gridFrom(day, 24, 10));
    for (let hour = 7; hour < 17; hour++) {
      expect(hourMean(light.dniWm2, hour, 6)).toBeCloseTo(file.dniWm2[hour]!, 6);
      expect(hourMean(light.ghiWm2, hour, 6)).toBeCloseTo(file.ghiWm2[hour]!, 6);
    }
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatch(/^In (\d+) of the event's \1 bright hours/);
    expect(notes[0]).toContain(`10 % ${sumShare < 1 ? "under" : "over"} GHI together`);
  },
);

test("where DNI alone is more than GHI, GHI and DHI stand", () => {
  const file = allThree(1.5, 1.2);
  const { light, notes } = laid(file, gridFrom(day, 24, 10));
  for (let hour = 7; hour < 17; hour++) {
    expect(hourMean(light.dhiWm2, hour, 6)).toBeCloseTo(file.dhiWm2[hour]!, 6);
    expect(hourMean(light.ghiWm2, hour, 6)).toBeCloseTo(file.ghiWm2[hour]!, 6);
  }
  expect(notes.join(" ")).toContain("50 % over GHI");
});

test("a beam beyond what clean air lets through is kept as light from the sky", () => {
  const plain = fileFrom(day, 24);
  const ghiWm2 = plain.ghiWm2.map((ghi) => 4 * ghi);
  const on = gridFrom(day, 24, 10);
  const { light } = laid({ ...plain, ghiWm2, dhiWm2: ghiWm2.map(() => 0) }, on);
  for (let i = 0; i < on.grid.steps; i++) {
    const sine = on.clear.sinElevation[i]!;
    const cleanest = sine > 0 ? on.clear.extraterrestrialWm2[i]! * 0.81 ** ((1 / sine) ** 0.6) : 0;
    expect(light.dniWm2[i]!).toBeLessThanOrEqual(Math.max(on.clear.dniWm2[i]!, cleanest) + 1e-3);
  }
  for (let hour = 6; hour < 18; hour++) expect(hourMean(light.ghiWm2, hour, 6)).toBeCloseTo(ghiWm2[hour]!, 9);
});

test("twilight when our sun is down is spread evenly, as light from the sky", () => {
  const file = fileFrom(day, 24);
  file.ghiWm2[1] = 3;
  const { light } = laid(file, gridFrom(day, 24, 10));
  expect(Array.from(light.dhiWm2.subarray(6, 12))).toEqual([3, 3, 3, 3, 3, 3]);
  expect(light.dniWm2[8]).toBe(0);
});

test("steps that straddle two hours take a part of each", () => {
  const file = fileFrom(day, 24);
  const on = gridFrom(day + 15 * 60_000, 23, 60); // an hourly step from a quarter past
  const { light } = laid(file, on);
  let wh = 0;
  for (let i = 3; i < 20; i++) wh += light.ghiWm2[i]!;
  const theirs = file.ghiWm2.subarray(3, 21).reduce((a, b) => a + b, 0);
  expect(wh / theirs).toBeCloseTo(1, 1);
  expect(light.ghiWm2.every(Number.isFinite)).toBe(true);
});

test("temperature runs straight between the middles of the hours and holds at the ends", () => {
  const { tempC } = laid(fileFrom(day, 24), gridFrom(day, 24, 30));
  expect(tempC![0]).toBe(0);
  expect(tempC![1]).toBeCloseTo(0.25, 12);
  expect(tempC![2]).toBeCloseTo(0.75, 12);
  expect(tempC!.at(-1)).toBe(23);
});

test("a typical year stands for the same calendar days, and says so; 29 February takes the 28th", () => {
  const february = Date.UTC(1998, 1, 28) - HOUR_MS; // midnight on the file's clock
  const file = fileFrom(february, 48, { typicalYear: true }); // 28 February and 1 March
  const leap = gridFrom(Date.UTC(2028, 1, 29) - HOUR_MS, 48, 60);
  const { light, notes, tempC } = laid(file, leap);
  expect(tempC![12]).toBe(12);
  expect(tempC![36]).toBe(36);
  expect(light.ghiWm2[12]).toBeGreaterThan(0);
  expect(notes.join(" ")).toContain("typical year");
  expect(notes.join(" ")).toContain("29 February");
});

test("another year's days stand in where the file has the calendar days, and a note says so", () => {
  const { notes } = laid(fileFrom(day, 72), gridFrom(Date.UTC(2029, 5, 1, 6), 24, 60));
  expect(notes).toEqual([
    "The file holds 2026-06-01 to 2026-06-04; its days stand for the same calendar days of the event, 2029-06-01 to 2029-06-02.",
  ]);
});

test("an event outside the file's days is a problem that names both ranges", () => {
  const found = weatherOnGrid(fileFrom(day, 24), ...onParts(gridFrom(Date.UTC(2026, 6, 1), 24, 60)));
  expect(found).toMatchObject({ ok: false, problems: [{ code: "weather-not-covered" }] });
  if (found.ok) return;
  expect(found.problems[0]!.message).toContain("2026-06-01 to 2026-06-02");
  expect(found.problems[0]!.message).toContain("2026-07-01 to 2026-07-02");
});

function onParts(on: ReturnType<typeof gridFrom>) {
  return [on.grid, on.clear, on.days] as const;
}
