import { expect, test } from "vitest";
import { seedWords } from "../../../engine/chance/stream.ts";
import { toGrid } from "../../../engine/grid.ts";
import type { KnownDay } from "../../../engine/sky/knownDays.ts";
import { drawSky, type PreparedSkies, prepareSkyEnsemble, type SkyEvent } from "../../../engine/sky/skyEnsemble.ts";
import { solarHour } from "../../../engine/sky/solarDay.ts";
import { makeSkyLight } from "../../../engine/sky/splitDiffuse.ts";
import { CLIMATE, type EventPlan, skyEvent } from "./skyEvent.ts";

const WEEKEND: EventPlan = { start: "2026-10-08T14:00", end: "2026-10-12T11:00" };
const words = seedWords("skies");

function ensemble(event: SkyEvent, known: (KnownDay | null)[] = []): PreparedSkies {
  return prepareSkyEnsemble({ ...event, climate: CLIMATE, knownDays: known });
}
function member(skies: PreparedSkies, number: number, from = words) {
  const light = makeSkyLight(skies.dayOfStep.length);
  const airTempC = new Float64Array(skies.dayOfStep.length);
  drawSky(skies, from, number, light, airTempC);
  return { light, airTempC, kt: Float64Array.from(skies.ktOfDay) };
}
const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const sd = (values: number[]) => Math.sqrt(mean(values.map((value) => (value - mean(values)) ** 2)));

test("every day's light, over all its hours, is Kt × H0, though the event covers only parts", () => {
  const event = skyEvent(WEEKEND);
  const skies = ensemble(event);
  const whole = skyEvent({ start: "2026-10-08T00:00", end: "2026-10-13T00:00" });
  const outer = ensemble(whole);
  for (let number = 0; number < 100; number++) {
    const part = member(skies, number);
    const all = member(outer, number);
    expect([...part.kt]).toEqual([...all.kt]);
    for (let day = 0; day < 5; day++) {
      let wh = 0;
      all.light.ghiWm2.forEach((ghi, i) => {
        if (whole.days.dayOfStep[i] === day) wh += ghi * whole.grid.stepH;
      });
      const wanted = all.kt[day]! * whole.days.extraterrestrialWhM2[day]!;
      expect(Math.abs(wh / wanted - 1)).toBeLessThan(1e-9);
    }
    // Who comes at 14:00 meets the same afternoon as who was there all day.
    const offset = 14 * 6;
    for (let i = 0; i < 60; i++) expect(part.light.ghiWm2[i]).toBeCloseTo(all.light.ghiWm2[i + offset]!, 4);
  }
});

test("the same seed gives the same sky to the last bit, in any order, and another seed another", () => {
  const event = skyEvent(WEEKEND);
  const skies = ensemble(event, [{ word: "cloudy" }]);
  const seventh = member(skies, 7);
  for (const other of [3, 900, 0]) member(skies, other);
  expect(member(skies, 7)).toEqual(seventh);
  expect(member(ensemble(event, [{ word: "cloudy" }]), 7)).toEqual(seventh);
  expect(member(skies, 8).kt).not.toEqual(seventh.kt);
  expect(member(skies, 7, seedWords("other")).kt).not.toEqual(seventh.kt);
});

/** A fingerprint of all bits: FNV-1a over the words of the numbers. */
function fingerprint(...arrays: Float64Array[]): number {
  let hash = 0x811c9dc5;
  for (const array of arrays)
    for (const byte of new Uint8Array(array.buffer)) hash = Math.imul(hash ^ byte, 0x01000193);
  return hash >>> 0;
}
test("skies keep their bits from one version of the project to the next", () => {
  const skies = ensemble(skyEvent(WEEKEND), [null, { word: "overcast", sureness: 0.8 }]);
  const prints = [0, 1, 4294967295].map((number) => {
    const { light, airTempC } = member(skies, number);
    return fingerprint(light.ghiWm2, light.dniWm2, light.dhiWm2, airTempC);
  });
  // A change here means that every run of every seed changes: say so in the changelog.
  expect(prints).toMatchInlineSnapshot(`
    [
      5861570,
      2477955650,
      2023826900,
    ]
  `);
});

test("light is never negative, adds up, and is dark by night; a day is held at 1.25 cloudless days", () => {
  const event = skyEvent(WEEKEND);
  const bright = prepareSkyEnsemble({ ...event, climate: { ...CLIMATE, kt: CLIMATE.kt.map(() => 0.88) } });
  for (const skies of [ensemble(event), bright]) {
    for (let number = 0; number < 100; number++) {
      const { light } = member(skies, number);
      for (let i = 0; i < event.grid.steps; i++) {
        const [ghi, dni, dhi] = [light.ghiWm2[i]!, light.dniWm2[i]!, light.dhiWm2[i]!];
        if (!(ghi >= 0 && dni >= 0 && dhi >= 0)) throw new Error(`negative light at step ${i}`);
        if (Math.abs(dhi + dni * toGrid(event.clear.sinElevation[i]!) - ghi) > 1e-9)
          throw new Error(`no balance at step ${i}`);
        if (event.clear.ghiWm2[i] === 0 && ghi !== 0) throw new Error(`light by night at step ${i}`);
      }
      expect(Math.max(...skies.indexOfDay)).toBeLessThanOrEqual(1.25);
    }
  }
});

test("at 1,600 m the afternoons of July are drawn duller than the mornings, and those of December are not", () => {
  const lessThanMorning = (start: string, end: string) => {
    const event = skyEvent({ start, end, stepMinutes: 30 });
    const skies = ensemble(event);
    const sums = [0, 0, 0, 0];
    for (let number = 0; number < 100; number++) {
      const { ghiWm2 } = member(skies, number).light;
      ghiWm2.forEach((ghi, i) => {
        const side = solarHour(event.grid.middleMs[i]!, -105) < 12 ? 0 : 2;
        sums[side]! += ghi;
        sums[side + 1]! += event.clear.ghiWm2[i]!;
      });
    }
    return sums[2]! / sums[3]! - sums[0]! / sums[1]!;
  };
  expect(lessThanMorning("2026-07-10T00:00", "2026-07-13T00:00")).toBeLessThan(-0.1);
  expect(Math.abs(lessThanMorning("2026-12-10T00:00", "2026-12-13T00:00"))).toBeLessThan(0.03);
});

const MEMBERS = 4000;
function ktOf(known: (KnownDay | null)[]): number[][] {
  const skies = ensemble(skyEvent(WEEKEND), known);
  const rows = Array.from({ length: MEMBERS }, (_, number) => [...member(skies, number).kt]);
  return Array.from({ length: 5 }, (_, day) => rows.map((row) => row[day]!));
}

test("a certain day is what was said, and its neighbours lean towards it", () => {
  const free = ktOf([]);
  const told = ktOf([null, null, { kt: 0.25, sureness: 1 }]);
  expect(Math.max(...told[2]!.map((kt) => Math.abs(kt - 0.25)))).toBeLessThan(0.001);
  expect(mean(told[3]!)).toBeLessThan(mean(free[3]!) - 0.03);
  expect(mean(told[1]!)).toBeLessThan(mean(free[1]!) - 0.03);
  // Farther away it matters less.
  expect(mean(free[3]!) - mean(told[3]!)).toBeGreaterThan(1.5 * (mean(free[4]!) - mean(told[4]!)));
});

test("the less sure a forecast is, the nearer its day comes to the climate, in mean and in spread", () => {
  const [sure, half, none] = [0.95, 0.6, 0].map((sureness) => ktOf([null, { word: "overcast", sureness }])[1]!);
  const free = ktOf([])[1]!;
  expect(none).toEqual(free);
  expect(mean(sure!)).toBeLessThan(mean(half!) - 0.05);
  expect(mean(half!)).toBeLessThan(mean(free) - 0.05);
  expect(sd(sure!)).toBeLessThan(0.6 * sd(free));
  expect(sd(half!)).toBeLessThan(sd(free) * 1.05);
});

test("words come out in their order", () => {
  const means = (["clear", "fair", "mixed", "cloudy", "overcast"] as const).map((word) =>
    mean(ktOf([{ word, sureness: 0.9 }])[0]!),
  );
  for (let k = 1; k < means.length; k++) expect(means[k]!).toBeLessThan(means[k - 1]!);
});

test("knowing a day changes no draw of members that were told nothing about cloud and air", () => {
  const event = skyEvent(WEEKEND);
  const [free, told] = [ensemble(event), ensemble(event, [null, null, null, null, { kt: 0.5, sureness: 0 }])];
  expect(member(told, 5)).toEqual(member(free, 5));
});

test("what cannot be is refused by name", () => {
  const event = skyEvent(WEEKEND);
  expect(() => ensemble(event, [{ kt: -0.1 }])).toThrow("knownDays[0].kt");
  expect(() => ensemble(event, [null, { word: "clear", sureness: 1.5 }])).toThrow("knownDays[1].sureness");
  expect(() =>
    ensemble(
      event,
      Array.from({ length: 6 }, () => ({ word: "clear" as const })),
    ),
  ).toThrow("5 days");
});

test("air follows the month, strays by some degrees, swings wider on clear days, and does not jump", () => {
  const event = skyEvent(WEEKEND);
  const skies = ensemble(event);
  const temps: number[] = [];
  const swings: { index: number; swing: number }[] = [];
  let jump = 0;
  for (let number = 0; number < 1500; number++) {
    const { airTempC } = member(skies, number);
    temps.push(airTempC[300]!);
    const day = [...airTempC].filter((_, i) => event.days.dayOfStep[i] === 2);
    swings.push({ index: skies.indexOfDay[2]!, swing: Math.max(...day) - Math.min(...day) });
    for (let i = 1; i < airTempC.length; i++) jump = Math.max(jump, Math.abs(airTempC[i]! - airTempC[i - 1]!));
  }
  expect(Math.abs(sd(temps) - 3)).toBeLessThan(0.6);
  const clear = mean(swings.filter(({ index }) => index > 0.9).map(({ swing }) => swing));
  const dull = mean(swings.filter(({ index }) => index < 0.5).map(({ swing }) => swing));
  expect(clear).toBeGreaterThan(1.2 * dull);
  expect(jump).toBeLessThan(1);
  const still = prepareSkyEnsemble({ ...event, climate: CLIMATE, airSpreadK: 0 });
  const means = Array.from({ length: 400 }, (_, number) => mean([...member(still, number).airTempC]));
  expect(Math.abs(mean(means) - 13)).toBeLessThan(0.6);
});

test.each([
  [
    "polar night",
    { start: "2026-12-20T12:00", end: "2026-12-23T12:00", zone: "Europe/Oslo", latitudeDeg: 78, longitudeDeg: 16 },
  ],
  [
    "polar day",
    { start: "2026-06-20T12:00", end: "2026-06-23T12:00", zone: "Europe/Oslo", latitudeDeg: 78, longitudeDeg: 16 },
  ],
  ["a change of clocks", { start: "2026-10-31T12:00", end: "2026-11-02T12:00" }],
  ["one hour of one day", { start: "2026-06-20T12:00", end: "2026-06-20T13:00" }],
  ["long steps", { start: "2026-06-20T12:00", end: "2026-06-24T12:00", stepMinutes: 60 }],
])("%s gives numbers", (_what, plan: EventPlan) => {
  const event = skyEvent(plan);
  const skies = ensemble(event, [{ word: "mixed" }]);
  for (let number = 0; number < 20; number++) {
    const { light, airTempC } = member(skies, number);
    for (const array of [light.ghiWm2, light.dniWm2, light.dhiWm2, airTempC])
      expect(array.every(Number.isFinite)).toBe(true);
    if (_what === "polar night") expect(Math.max(...light.ghiWm2)).toBe(0);
  }
});
