import { expect, test } from "vitest";
import { runMembers } from "../../../engine/odds/odds.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { differenceInWords, differences } from "../../../engine/scenario/differences.ts";
import { type Contender, versus } from "../../../engine/versus/versus.ts";
import { record } from "../../truth/record.ts";
import { exampleEnsemble, variantChanges } from "../ensemble/exampleEnsemble.ts";

const MEMBERS = 300;
const meadow = variantChanges("walnut-grove", "meadow");

function contender(name: string, changes: readonly Change[], seed = "tests"): Contender {
  const ensemble = exampleEnsemble("walnut-grove", [...meadow, ...changes], seed);
  return { name, ensemble, part: runMembers(ensemble, 0, MEMBERS) };
}

const plain = contender("the meadow panels", []);

test("pairing narrows a difference at least threefold", () => {
  const width = ({
    low,
    high,
    unpairedLow,
    unpairedHigh,
  }: {
    low: number;
    high: number;
    unpairedLow: number;
    unpairedHigh: number;
  }) => (unpairedHigh - unpairedLow) / (high - low);
  const changes: [string, Change[]][] = [
    ["without the logging computer", [{ at: "gear.logger", remove: true }]],
    ["without the data position", [{ at: "stations.hf-data", remove: true }]],
    ["300 Ah", [{ at: "bank.blockAh", to: 300 }]],
  ];
  const narrower = changes.map(([name, change]) => width(versus([plain, contender(name, change)]).others[0]!.margin));
  const worst = Math.min(...narrower);
  record({
    what: "pairing: how much narrower a difference in lowest charge is than between strangers (least of three changes; 3 is asked for)",
    source: "the engine against itself",
    tolerance: 1000,
    why: "at least 3",
    worst,
    unit: "times",
    n: narrower.length,
  });
  expect(worst).toBeGreaterThan(3);
  // Against other skies the pairing is lost: the proof that it is the pairing that does it.
  const strange = {
    ...contender("the same, other skies", [], "other"),
    part: { ...contender("x", [], "other").part, seed: "tests" },
  };
  expect(width(versus([plain, strange]).others[0]!.margin)).toBeLessThan(1.3);
});

test("the same plan twice is no difference worth carrying", () => {
  const { others } = versus([plain, contender("the same again", [])]);
  expect(others[0]!.margin.mean).toBe(0);
  expect(others[0]!.tally).toMatchObject({ onlyThis: 0, onlyFirst: 0 });
  expect(others[0]!.sentence).toContain("no difference worth carrying");
});

test("flips are counted, named and explained", () => {
  const { first, others } = versus([contender("the van alone", [{ at: "panels.meadow", remove: true }]), plain]);
  const [other] = others;
  const { both, onlyThis, onlyFirst, neither } = other!.tally;
  expect(both + onlyThis + onlyFirst + neither).toBe(MEMBERS);
  expect(other!.report.holds.count).toBe(both + onlyThis);
  expect(first.report.holds.count).toBe(both + onlyFirst);
  expect(other!.holds.mean).toBeCloseTo((onlyThis - onlyFirst) / MEMBERS, 12);
  expect(other!.holds.low).toBeLessThan(other!.holds.mean);
  expect(other!.holds.high).toBeGreaterThan(other!.holds.mean);
  expect(other!.gained.moreSunWh).toBeGreaterThan(500);
  expect(other!.gained.why).toMatch(/more from the sun/);
  for (const member of other!.gained.members) {
    expect(plain.part.outcomes.belowFromStep[member]).toBe(-1);
  }
});

test("cost, mass and work stand side by side where they are stated", () => {
  const { first, others } = versus([contender("the van alone", [{ at: "panels.meadow", remove: true }]), plain]);
  // The file states 900 and 23 kg for the block, and 130, 7 kg and 12 min for each of two folding panels.
  expect(first.burden).toMatchObject({ cost: 900, massKg: 23, setupMinutes: 0 });
  expect(others[0]!.burden).toMatchObject({ cost: 900 + 2 * 130, massKg: 23 + 2 * 7, setupMinutes: 24 });
});

test("contenders must have met the same members", () => {
  expect(() => versus([plain])).toThrow(/2 or more/);
  expect(() => versus([plain, { ...plain, part: runMembers(plain.ensemble, 0, 10) }])).toThrow(/same seed and members/);
});

test("what differs is listed by name, and names and notes are no difference", () => {
  const before = {
    name: "a",
    bank: { blockAh: 100 },
    panels: [{ id: "roof", name: "Roof", count: 2 }],
    gear: [{ id: "router", name: "Router" }],
  };
  const after = {
    name: "b",
    bank: { blockAh: 200 },
    panels: [
      { id: "roof", name: "Roof", count: 2 },
      { id: "meadow", name: "Meadow", count: 1 },
    ],
    gear: [],
  };
  expect(differences(before, after).map(differenceInWords)).toEqual([
    "bank.blockAh 100 → 200",
    "+ panels.meadow (Meadow)",
    "− gear.router (Router)",
  ]);
});
