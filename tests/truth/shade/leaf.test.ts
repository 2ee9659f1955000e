import { expect, test } from "vitest";
import { eventLeafShare, leafShareOf, seasonLeafShare } from "../../../engine/scenario/leafShareOf.ts";
import { Obstacle, type Tree } from "../../../engine/scenario/obstacle.ts";
import { record } from "../record.ts";

/** Day of the year by which half of the leaf is out, and off, at places with long records (all from memory). */
const RECORDS = [
  { place: "Washington, D.C.", latitudeDeg: 38.9, out: 105, off: 309 },
  { place: "central Massachusetts, an upland forest", latitudeDeg: 42.5, out: 132, off: 286 },
  { place: "southern England, oak", latitudeDeg: 51.2, out: 118, off: 312 },
  { place: "southern Germany, beech", latitudeDeg: 48.5, out: 118, off: 295 },
  { place: "southern Finland, birch", latitudeDeg: 61, out: 138, off: 274 },
] as const;

/** First and last day on which half of the leaf or more is on. */
function halfDays(latitudeDeg: number): [out: number, off: number] {
  const on = Array.from({ length: 365 }, (_, d) => d + 1).filter((day) => seasonLeafShare(latitudeDeg, day) >= 0.5);
  return [on[0]!, on.at(-1)!];
}

test("leaves come and go within three weeks of the dates of known places", () => {
  const errors = RECORDS.flatMap(({ latitudeDeg, out, off }) => {
    const [ours, oursOff] = halfDays(latitudeDeg);
    return [Math.abs(ours - out), Math.abs(oursOff - off)];
  });
  const worst = Math.max(...errors);
  record({
    what: "half of the leaf out in spring, off in autumn",
    source: "phenological records of five places, 39 to 61° N (from memory)",
    tolerance: 26,
    why: "mild coasts keep their leaf into November, uplands lose it in mid-October; kinds differ by two weeks",
    worst,
    unit: "d",
    n: errors.length,
  });
  expect(worst).toBeLessThan(26);
  expect(errors.reduce((sum, each) => sum + each, 0) / errors.length).toBeLessThan(14);
});

test("the south has it half a year later, the tropics never shed it, the far north has a short summer", () => {
  expect(seasonLeafShare(-42, 15)).toBe(1);
  expect(seasonLeafShare(-42, 197)).toBe(0);
  expect(seasonLeafShare(42, 197)).toBe(1);
  expect(seasonLeafShare(42, 15)).toBe(0);
  for (let day = 1; day <= 366; day += 5) {
    expect(seasonLeafShare(10, day)).toBe(1);
    expect(seasonLeafShare(-20, day)).toBe(1);
    const share = seasonLeafShare(50, day);
    expect(share).toBeGreaterThanOrEqual(0);
    expect(share).toBeLessThanOrEqual(1);
  }
  const [out, off] = halfDays(68);
  expect(off - out).toBeLessThan(120);
  expect(off - out).toBeGreaterThan(60);
});

test("what somebody states goes before the season, and evergreens keep theirs", () => {
  const tree = (parts: object) =>
    Obstacle.parse({
      ...{ kind: "tree", id: "t", eastM: 0, northM: 5, heightM: 9, crownBaseM: 2, crownRadiusM: 3 },
      ...parts,
    }) as Tree;
  expect(leafShareOf(tree({}), 0.2)).toBe(0.2);
  expect(leafShareOf(tree({ leafShare: 0.7 }), 0.2)).toBe(0.7);
  expect(leafShareOf(tree({ foliage: "evergreen" }), 0.2)).toBe(1);
  expect(leafShareOf(tree({ foliage: "evergreen", leafShare: 0.4 }), 0.2)).toBe(0.4);
  const event = (start: string, end: string, latitudeDeg: number) =>
    eventLeafShare({ place: { latitudeDeg }, time: { start, end } } as never);
  expect(event("2026-01-10T12:00", "2026-01-14T12:00", 50)).toBe(0);
  expect(event("2026-12-30T12:00", "2027-01-03T12:00", -50)).toBe(1);
});
