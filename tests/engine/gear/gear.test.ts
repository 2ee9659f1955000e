import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { gearChange } from "../../../engine/gear/gearChange.ts";
import { gearDoubt } from "../../../engine/gear/gearDoubt.ts";
import { GENERIC_GEAR } from "../../../engine/gear/gearTable.ts";
import { type Measurement, measuredDoubts, readMeasuredGear } from "../../../engine/gear/measuredGear.ts";
import { type OwnGear, onShelf, ownGearId } from "../../../engine/gear/ownGear.ts";
import { nearGear, searchGear } from "../../../engine/gear/searchGear.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";

const moor = JSON.parse(readFileSync("scenarios/peat-moor.json", "utf8"));
const taken = [...moor.gear, ...moor.stations].map(({ id }: { id: string }) => id);

function added(id: string, measured?: Measurement) {
  const gear = GENERIC_GEAR.find((each) => each.id === id)!;
  const changed = applyChanges(moor, [gearChange(gear, measured, taken)]);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  const read = readScenario(changed.document);
  if (!read.ok) throw new Error(`${id}: ${read.problems[0]!.message}`);
  return read.scenario;
}

test("what to plan with lies between the least and the most, and everything says where it comes from", () => {
  for (const { id, idle, working, source, share } of GENERIC_GEAR) {
    for (const range of idle === null ? [working] : [idle, working]) {
      expect(range.low, id).toBeGreaterThan(0);
      expect(range.usual, id).toBeGreaterThanOrEqual(range.low);
      expect(range.high, id).toBeGreaterThanOrEqual(range.usual);
    }
    expect(source.length, id).toBeGreaterThan(5);
    expect(share > 0 && share <= 1, id).toBe(true);
  }
  expect(new Set(GENERIC_GEAR.map(({ id }) => id)).size).toBe(GENERIC_GEAR.length);
});

test("figures of the trade", () => {
  // 22 A key-down and 1 to 2 A on receive: club pages on battery operation; 29 Ah a day of standing draw: a motorhome's energy audit.
  const of = (id: string) => GENERIC_GEAR.find((gear) => gear.id === id)!;
  expect(of("hf-100").working.low).toBeLessThanOrEqual(22);
  expect(of("hf-100").working.high).toBeGreaterThanOrEqual(22);
  expect(of("standing").working.usual * 24).toBeCloseTo(29, 0);
  // 20 to 50 Ah a day in heat for a fridge: common practice, no source.
  const fridgeAh = of("fridge").working.usual * of("fridge").share * 24;
  expect(fridgeAh).toBeGreaterThan(20);
  expect(fridgeAh).toBeLessThan(50);
});

test.each(GENERIC_GEAR.map(({ id }) => id))("%s goes into a scenario that then reads", (id) => {
  const scenario = added(id);
  const gear = GENERIC_GEAR.find((each) => each.id === id)!;
  const list = gear.radio === null ? scenario.gear : scenario.stations;
  expect(list.at(-1)!.name).toBe(gear.name);
  expect(list.length).toBe((gear.radio === null ? moor.gear : moor.stations).length + 1);
});

test("what was measured goes before what is usual, in the kind's own unit", () => {
  const station = added("hf-100", { gear: "hf-100", idle: 1.4, working: 19 }).stations.at(-1)!;
  expect(station.radio.receive).toEqual({ drawA: 1.4, atV: 13.8 });
  expect(station.radio.fullPower).toEqual({ drawA: 19, atV: 13.8 });
  expect(added("router", { gear: "router", working: 6.5 }).gear.at(-1)).toMatchObject({
    working: { drawW: 6.5 },
    idle: { drawW: 4.5 },
  });
});

test("a short name in use gets a number", () => {
  const fan = GENERIC_GEAR.find(({ id }) => id === "fan")!;
  expect(gearChange(fan, undefined, ["fan", "fan-2"]).add).toMatchObject({ id: "fan-3" });
});

describe("searching", () => {
  test("takes beginnings of words, in names first and then in what a thing is also called", () => {
    expect(searchGear("fridge").map(({ id }) => id)).toEqual(["fridge"]);
    expect(searchGear("FM 50").map(({ id }) => id)).toEqual(["fm-50"]);
    const [first, ...others] = searchGear("switch");
    expect([first!.id, others.length]).toEqual(["switch", 0]);
    expect(searchGear("laptop").map(({ id }) => id)).toEqual(["laptop", "laptop-charging"]);
    expect(searchGear("fan")[0]!.name).toMatch(/Fan/i);
    expect(searchGear("radio").length).toBeGreaterThan(4);
  });
  test("words that find nothing lead to what was probably meant", () => {
    for (const [query, id] of [
      ["frige", "fridge"],
      ["frezer", "freezer"],
      ["amplifiers", "amplifier"],
      ["heeting mat", "heater-pad"],
      ["labtop", "laptop"],
      ["big fridge", "fridge"],
    ]) {
      expect(searchGear(query!), query).toEqual([]);
      expect(
        nearGear(query!).map((gear) => gear.id),
        query,
      ).toContain(id);
    }
    for (const query of ["", "zeppelin", "xy", "(.*)"]) expect(nearGear(query), query).toEqual([]);
  });
  test("everything for nothing, nothing for nonsense", () => {
    expect(searchGear("  ")).toHaveLength(GENERIC_GEAR.length);
    expect(searchGear("zeppelin")).toEqual([]);
    expect(searchGear("(.*)")).toHaveLength(GENERIC_GEAR.length); // no words in it
  });
});

describe("a figure far from what such things take", () => {
  const fridge = GENERIC_GEAR.find(({ id }) => id === "fridge")!;
  test("is asked about, and no figure of any make within the range is", () => {
    expect(gearDoubt(fridge, "working", 320)).toBe(
      "Compressor fridge, 30 to 45 L, at work: 320 A is 80 times the usual of such things (3 to 5 A): really?",
    );
    expect(gearDoubt(fridge, "working", 0.04)).toMatch(/0.01 of the usual/);
    for (const gear of GENERIC_GEAR) {
      for (const which of ["idle", "working"] as const) {
        const range = gear[which];
        if (range === null) continue;
        for (const value of [range.low, range.usual, range.high]) expect(gearDoubt(gear, which, value)).toBeNull();
        // A slip of the point, either way.
        expect(gearDoubt(gear, which, 10 * range.high)).toMatch(/really\?$/);
        expect(gearDoubt(gear, which, range.low / 10)).toMatch(/really\?$/);
      }
    }
  });
  test("counts once somebody confirms it", () => {
    expect(measuredDoubts([{ gear: "fridge", working: 320 }])).toHaveLength(1);
    expect(
      measuredDoubts([
        { gear: "fridge", working: 320, isConfirmed: true },
        { gear: "fan", working: 0.3 },
      ]),
    ).toEqual([]);
  });
});

describe("a kind of one's own", () => {
  const winch: OwnGear = { id: "winch", name: "Mast winch", unit: "A", working: 28, use: "whenStaffed", share: 0.01 };
  test("is found before the shelf's, and goes into a scenario that then reads", () => {
    const own = [onShelf(winch)];
    expect(searchGear("winch", own).map(({ id }) => id)).toEqual(["winch"]);
    expect(nearGear("whinch", own).map(({ id }) => id)).toEqual(["winch"]);
    const changed = applyChanges(moor, [gearChange(own[0]!, undefined, taken)]);
    if (!changed.ok) throw new Error(changed.problems[0]!.message);
    const read = readScenario(changed.document);
    if (!read.ok) throw new Error(read.problems[0]!.message);
    expect(read.scenario.gear.at(-1)).toMatchObject({
      id: "winch",
      working: { drawA: 28, atV: 13.8 },
      use: { when: "whenStaffed", share: 0.01 },
    });
  });
  test("has a short name that nothing else has", () => {
    expect(ownGearId("Mast winch", [])).toBe("mast-winch");
    expect(ownGearId("Fridge", ["fridge-2"])).toBe("fridge-3");
    expect(ownGearId("7 °", [])).toBe("own");
  });
});

describe("a file of measured gear", () => {
  const file = (measured: unknown, more: object = {}) =>
    readMeasuredGear(JSON.stringify({ format: "duskline-gear", version: 1, measured, ...more }));
  test("is read", () => {
    expect(file([{ gear: "fan", working: 0.4, on: "2026-05-31" }])).toEqual({
      ok: true,
      measured: [{ gear: "fan", working: 0.4, on: "2026-05-31" }],
      own: [],
    });
  });
  test.each([
    ["not JSON", readMeasuredGear("{"), /not JSON/],
    ["too long", readMeasuredGear(" ".repeat(100_001)), /at most 100000/],
    ["another format", readMeasuredGear('{"format":"x","version":1,"measured":[]}'), /duskline-gear/],
    ["a newer version", file([], { version: 2 }), /version/],
    ["unknown gear", file([{ gear: "zeppelin", working: 1 }]), /measured\.0\.gear/],
    ["below nothing", file([{ gear: "fan", working: -1 }]), /measured\.0\.working.*0/],
    ["a word for a figure", file([{ gear: "fan", working: "much" }]), /measured\.0\.working/],
    ["a field of its own", file([{ gear: "fan", watts: 1 }]), /watts/],
    [
      "one kind twice",
      file([
        { gear: "fan", working: 1 },
        { gear: "fan", working: 2 },
      ]),
      /twice/,
    ],
    [
      "an own kind with a name of the shelf's",
      file([], { own: [{ id: "fan", name: "Fan", unit: "A", working: 1, use: "always" }] }),
      /own\.0\.id.*already/,
    ],
    [
      "an own kind without a figure",
      file([], { own: [{ id: "winch", name: "Winch", unit: "A", use: "always" }] }),
      /own\.0\.working/,
    ],
    [
      "an own kind twice",
      file([], { own: [0, 1].map(() => ({ id: "winch", name: "Winch", unit: "A", working: 1, use: "always" })) }),
      /winch is an own kind twice/,
    ],
    ["no list", file({ __proto__: [] }), /measured/],
  ])("is refused in words: %s", (_, read, words) => {
    expect(read.ok).toBe(false);
    expect((read as { readonly sentences: readonly string[] }).sentences.join(" ")).toMatch(words);
  });
});
