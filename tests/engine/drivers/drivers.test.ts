import { describe, expect, test } from "vitest";
import { drivers } from "../../../engine/drivers/drivers.ts";
import { driversEnds } from "../../../engine/drivers/driversEnds.ts";
import {
  DRIVER_FACTORS,
  makeDriversRoom,
  OUTCOME_BELOW_FROM,
  OUTCOME_LOWEST_SHARE,
  OUTCOME_UNSERVED_WH,
  stepDriversMember,
  WEATHER,
} from "../../../engine/drivers/driversMember.ts";
import { sheddableLoads, withoutLoad } from "../../../engine/drivers/driversShedding.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import { exampleEnsemble, variantChanges } from "../ensemble/exampleEnsemble.ts";

const ensemble = exampleEnsemble("walnut-grove", variantChanges("walnut-grove", "meadow"));
const MEMBERS = 60;
const plain = runMembers(ensemble, 0, MEMBERS).outcomes;

function outcomeOf(memberOf: number[], room = makeDriversRoom(ensemble), of = ensemble) {
  room.memberOf.set(memberOf);
  stepDriversMember(of, room);
  return Array.from(room.outcome);
}
const all = (member: number) => DRIVER_FACTORS.map(() => member);

describe("a member put together from several", () => {
  test("with one member for all factors is that member, whatever was in the room before", () => {
    const room = makeDriversRoom(ensemble);
    for (const member of [3, 59, 3, 0]) {
      const outcome = outcomeOf(all(member), room);
      expect(outcome[OUTCOME_LOWEST_SHARE]).toBeCloseTo(plain.lowestShare[member]!, 12);
      expect(outcome[OUTCOME_BELOW_FROM]).toBe(plain.belowFromStep[member]);
      expect(outcome[OUTCOME_UNSERVED_WH]).toBeCloseTo(plain.unservedWh[member]!, 6);
    }
  });

  test("each factor alone changes what becomes of it", () => {
    const own = outcomeOf(all(3));
    for (const [f, factor] of DRIVER_FACTORS.entries()) {
      const memberOf = all(3);
      memberOf[f] = 8;
      const other = outcomeOf(memberOf);
      expect(other, factor).not.toEqual(own);
    }
    expect(outcomeOf(all(3))).toEqual(own);
  });

  test("a sky that stands in the room already is the sky that would be drawn", () => {
    const room = makeDriversRoom(ensemble);
    const memberOf = all(5);
    memberOf[WEATHER] = 7;
    outcomeOf(memberOf, room);
    expect(outcomeOf(all(7), room)).toEqual(outcomeOf(all(7)));
  });
});

describe("ends", () => {
  const light = Float64Array.from({ length: 200 }, (_, m) => (m * 37) % 200);
  const ends = driversEnds(ensemble, 0, light, light);

  test("the members that lend their weather stand around one in ten, from either end", () => {
    const low = ends.find(({ factor, isLow }) => factor === "weather" && isLow)!;
    const high = ends.find(({ factor, isLow }) => factor === "weather" && !isLow)!;
    expect([...low.lenders].map((m) => light[m]!).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 20 }, (_, k) => 10 + k),
    );
    expect([...high.lenders].map((m) => light[m]!).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 20 }, (_, k) => 170 + k),
    );
    expect(low.value).toBeCloseTo(0.0195, 9); // mean of 10…29, in thousands
  });

  test("every factor has two, low first, and none where there is none of it", () => {
    expect(ends.map(({ factor }) => factor)).toEqual(DRIVER_FACTORS.flatMap((factor) => [factor, factor]));
    for (const end of ends.filter(({ isLow }) => isLow)) {
      const high = ends.find(({ factor, isLow }) => factor === end.factor && !isLow)!;
      expect(end.value).toBeLessThan(high.value);
    }
    const bare = driversEnds({ ...ensemble, hasCrowns: false }, 0, light, light);
    expect(bare.some(({ factor }) => factor === "canopy")).toBe(false);
  });
});

describe("a load switched off", () => {
  const { scenario } = ensemble.prepared;
  const off = (id: string) => withoutLoad(ensemble, sheddableLoads(scenario).find((load) => load.id === id)!);
  const wanted = (of: typeof ensemble) => of.prepared.loads.wantedW.reduce((sum, watts) => sum + watts, 0);

  test("is gone, and nothing else", () => {
    const without = off("fridge");
    const fridge = ensemble.prepared.loads.devices.find(({ id }) => id === "fridge")!;
    const own = fridge.alwaysW.reduce((sum, watts, i) => sum + watts + fridge.usedW[i]!, 0);
    expect(own).toBeGreaterThan(0);
    expect(wanted(ensemble) - wanted(without)).toBeCloseTo(own, 6);
  });

  test("a station takes along its companions and what works while it is staffed", () => {
    const without = off("hf-data");
    for (const device of without.prepared.loads.devices.filter(({ id }) => id.startsWith("hf-data/"))) {
      expect(Math.max(...device.alwaysW, ...device.usedW), device.id).toBe(0);
    }
    const logger = (of: typeof ensemble) =>
      of.prepared.loads.devices.find(({ id }) => id === "logger")!.usedW.reduce((sum, watts) => sum + watts, 0);
    // From 20:00 to 21:00 it is the only one staffed.
    expect(logger(ensemble) - logger(without)).toBeCloseTo(3 * 6 * 5, 6);
  });

  test("moves nobody else's draws: without a silent load members stay as they are, bit by bit", () => {
    const nothing = withoutLoad(ensemble, { id: "nobody", name: "nobody", isStation: false });
    for (const member of [0, 9]) {
      expect(outcomeOf(all(member), makeDriversRoom(nothing), nothing)).toEqual(outcomeOf(all(member)));
    }
  });
});

describe("the report", () => {
  const report = drivers(ensemble, MEMBERS)!;

  test("the shedding list runs from the largest gain down, and no gain is a loss", () => {
    const gains = report.shedding.map(({ holdsGain }) => holdsGain.value);
    expect([...gains].sort((a, b) => b - a)).toEqual(gains);
    expect(Math.min(...gains)).toBeGreaterThanOrEqual(0);
    for (const line of report.shedding) expect(line.marginGain.value).toBeGreaterThan(0);
  });

  test("the failing member in the middle is one that fails, and hours count from its failing", () => {
    const failing = Array.from(plain.belowFromStep)
      .filter((step) => step >= 0)
      .sort((a, b) => a - b);
    if (failing.length === 0) throw new Error("the example no longer fails; take another one");
    const { member, failsAfterH } = report.medianFailing!;
    expect(failsAfterH).toBeCloseTo(plain.belowFromStep[member]! / 6, 9);
    expect(plain.belowFromStep[member]).toBe(failing[Math.floor((failing.length - 1) / 2)]);
    for (const line of report.shedding) {
      expect(line.medianHolds).toBe(line.gainedH === null);
      if (line.gainedH !== null) expect(line.gainedH).toBeGreaterThanOrEqual(0);
    }
  });

  test("dull and bright weather pull apart, and so do lazy and keen operators", () => {
    const line = (name: string) => report.factors.find(({ factor }) => factor === name)!;
    for (const [name, sign] of [
      ["weather", 1],
      ["intensity", -1],
      ["idleDraw", -1],
      ["panelYield", 1],
      ["bankHealth", 1],
      ["canopy", 1],
    ] as const) {
      const { low, high } = line(name);
      expect(sign * (high!.marginGain.value - low!.marginGain.value), name).toBeGreaterThan(0);
    }
  });

  test("the same seed gives the same report", () => {
    expect(drivers(ensemble, MEMBERS)).toEqual(report);
  });
});

test("it says how far it is, and gives up when told to", () => {
  const steps: [number, number][] = [];
  const given = drivers(ensemble, 20, (done, of) => {
    steps.push([done, of]);
    return true;
  })!;
  expect(steps.at(-1)).toEqual([given.runs, given.runs]);
  expect(steps.every(([done], k) => k === 0 || done > steps[k - 1]![0])).toBe(true);
  // Ten rows at a time, first the shares and then the what-ifs.
  for (const stop of [1, 2, 3, 4]) {
    let calls = 0;
    expect(drivers(ensemble, 20, () => ++calls < stop)).toBeNull();
    expect(calls).toBe(stop);
  }
});

test.each([0, 19, 20.5, 100_001, 1e9, Number.NaN])("%s rows are refused", (rows) => {
  expect(() => drivers(ensemble, rows)).toThrow(`members must be a whole number in 20…100000, got ${rows}`);
});
