import { expect, test } from "vitest";
import { prepareLoads } from "../../../engine/load/prepareLoads.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { timeGrid } from "../../../engine/scenario/timeGrid.ts";
import { plainInput, readPlain } from "../../truth/run/plainScenario.ts";

type Station = NonNullable<ScenarioInput["stations"]>[number];

/** A 100 W set that takes 10 W on receive and 200 W at full power. */
const station = (changes: Partial<Station> = {}): Station => ({
  id: "one",
  name: "One",
  radio: { ratedW: 100, receive: { drawW: 10 }, fullPower: { drawW: 200 } },
  staffed: [{ from: "10:00", to: "11:00" }],
  modes: [{ mode: "fm", share: 1 }],
  transmitW: 25,
  sendingShare: 0.5,
  ...changes,
});

/** Loads at 10:00, when stations are staffed, and at 11:00, when they are not. */
function loads(parts: Partial<ScenarioInput>) {
  const time = { start: "2026-06-12T10:00", end: "2026-06-12T12:00", stepMinutes: 60 as const };
  const read = readPlain(plainInput({ ...parts, time }));
  const grid = timeGrid(read.time, "Etc/UTC");
  if (!grid.ok) throw new Error("no grid");
  return prepareLoads(read.gear, read.stations, grid.grid, new Float64Array(2), null);
}

test("a carrier at a quarter of the power swings half-way from the bias, 0.15 of full draw unless stated", () => {
  // 30 + (200 − 30) × √0.25 = 115 W while sending, half the hour.
  expect(loads({ stations: [station()] }).wantedW[0]).toBeCloseTo(10 + 0.5 * (115 - 10), 9);
  const stated = station({ radio: { ...station().radio, bias: { drawW: 60 } } });
  expect(loads({ stations: [stated] }).wantedW[0]).toBeCloseTo(10 + 0.5 * (130 - 10), 9);
});

test("a radio left on receive takes as much while nobody is there, and no more while somebody is", () => {
  const off = loads({ stations: [station({ sendingShare: 0 })] }).wantedW;
  const left = loads({ stations: [station({ sendingShare: 0, whenUnstaffed: "receive" })] }).wantedW;
  expect([...off]).toEqual([10, 0]);
  expect([...left]).toEqual([10, 10]);
});

test("stations behind one interlock share the air, each in proportion, and so do their amplifiers", () => {
  const amplifier = { id: "amp", name: "Amplifier", working: { drawW: 40 }, works: "sending" as const };
  const pair = (interlock?: string) =>
    ["one", "two"].map((id) =>
      station({ id, sendingShare: 0.8, companions: [amplifier], ...(interlock === undefined ? {} : { interlock }) }),
    );
  // Free, each sends 0.8 of the hour; locked, 0.5: 105 W of radio and 40 W of amplifier above receiving.
  expect(loads({ stations: pair() }).wantedW[0]).toBeCloseTo(2 * (10 + 0.8 * 145), 9);
  expect(loads({ stations: pair("mast") }).wantedW[0]).toBeCloseTo(2 * (10 + 0.5 * 145), 9);
});

test("peaks of stations behind one interlock do not meet, those of others do", () => {
  const three = (interlock?: string) => [
    station(interlock === undefined ? {} : { interlock }),
    station({ id: "two", ...(interlock === undefined ? {} : { interlock }) }),
    station({ id: "three" }),
  ];
  expect(loads({ stations: three() }).stations[0]!.peakTogetherW[0]).toBeCloseTo(3 * 105, 9);
  expect(loads({ stations: three("mast") }).stations[0]!.peakTogetherW[0]).toBeCloseTo(2 * 105, 9);
});

test("gear idles, and works on top of that for its share of the time; what works by itself is always on", () => {
  // 3 × 0.5 A at 12 V idling 2 W each: 4 W more while they work.
  const gear = (use: NonNullable<ScenarioInput["gear"]>[number]["use"]) =>
    loads({ gear: [{ id: "g", name: "G", count: 3, idle: { drawW: 2 }, working: { drawA: 0.5, atV: 12 }, use }] })
      .devices[0]!;
  const always = gear({ when: "always", share: 0.5 });
  expect([...always.alwaysW, ...always.usedW]).toEqual([12, 12, 0, 0]);
  const clock = gear({ when: "byTheClock", windows: [{ from: "11:00", to: "11:30" }], share: 0.5 });
  expect([...clock.alwaysW, ...clock.usedW]).toEqual([6, 6, 0, 3]);
});
