import { expect, test } from "vitest";
import type { OwnedThing } from "../../../engine/packing/ownedThing.ts";
import { awgMm2, makeBeats, thingPrice, totalsOf } from "../../../engine/packing/thingPrice.ts";

const thing = (more: Partial<OwnedThing>): OwnedThing =>
  ({ id: "x", kind: "panel", name: "X", count: 2, ratedW: 100, ...more }) as OwnedThing;

test("wire gauges have the sections of the standard's table: AWG 18, 10, 2, 1/0, 4/0 (ASTM B258; from memory)", () => {
  for (const [awg, mm2] of [["18", 0.823], ["10", 5.26], ["2", 33.6], ["1/0", 53.5], ["4/0", 107]] as const)
    expect(Math.abs(awgMm2(awg) / mm2 - 1)).toBeLessThan(0.003);
}); // biome-ignore format: pairs

test("what nobody weighed weighs what such things do: 100 Ah of LFP 10–14 kg, of AGM 25–33; 120 W 5–9; a lead its copper and more (common practice, no source)", () => {
  const kg = (more: Partial<OwnedThing>) => thingPrice(thing(more)).mass!;
  const within = (value: number, low: number, high: number) => {
    expect(value).toBeGreaterThanOrEqual(low);
    expect(value).toBeLessThanOrEqual(high);
  };
  within(kg({ kind: "battery", chemistry: "lfp", blockAh: 100 }), 10, 14);
  within(kg({ kind: "battery", chemistry: "agm", blockAh: 100 }), 25, 33);
  within(kg({ kind: "battery", chemistry: "flooded", blockAh: 220, blockV: 6 }), 24, 33);
  within(kg({ kind: "panel", ratedW: 120 }), 5, 9);
  within(kg({ kind: "generator", continuousW: 1800, chargerA: 25, fuelL: 4 }), 19, 26);
  within(kg({ kind: "controller", maxChargeA: 20 }), 0.5, 1.2);
  // 25 m of two conductors of 5.26 mm² are 2.36 kg of copper.
  within(kg({ kind: "lead", lengthM: 25, awg: "10" }), 2.36, 4.5);
});

test("a stated mass goes before the usual one, and 0 is a mass", () => {
  expect(thingPrice(thing({ massKg: 0 }))).toMatchObject({ mass: 0, isTypical: false });
  expect(thingPrice(thing({}))).toMatchObject({ isTypical: true, minutes: null, money: 0 });
});

test("money is 0 for what is at hand, and not stated for what has to be had and has no price", () => {
  expect(thingPrice(thing({ get: "hand" })).money).toBe(0);
  expect(thingPrice(thing({ get: "borrow" })).money).toBeNull();
  expect(thingPrice(thing({ get: "buy", cost: 40 })).money).toBe(40);
});

test("a sum says of how many pieces it is not stated, and never counts them as 0", () => {
  const prices = [thing({ setupMinutes: 5 }), thing({}), thing({ massKg: 4, get: "borrow" })].map(thingPrice);
  const totals = totalsOf([2, 3, 1], prices);
  expect(totals.minutes).toEqual({ sum: 10, notStated: 4, typical: 0 });
  expect(totals.money).toEqual({ sum: 0, notStated: 1, typical: 0 });
  expect(totals.mass).toEqual({ sum: 2 * 5.5 + 3 * 5.5 + 4, notStated: 0, typical: 5 });
});

test("what beats another takes no more of anything, said or unsaid, and less of something", () => {
  const prices = [thing({ massKg: 1, setupMinutes: 5 }), thing({ massKg: 1 })].map(thingPrice);
  const beats = makeBeats(prices);
  const set = (...take: number[]) => ({ take, totals: totalsOf(take, prices) });
  expect(beats(set(1, 0), set(2, 0))).toBe(true);
  expect(beats(set(1, 1), set(1, 2))).toBe(true);
  expect(beats(set(1, 0), set(1, 0))).toBe(false);
  // Lighter and quicker as far as it is said; what the other thing's minutes are nobody knows.
  expect(beats(set(0, 1), set(2, 0))).toBe(false);
  expect(beats(set(1, 0), set(0, 2))).toBe(false);
});
