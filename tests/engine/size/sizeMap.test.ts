import { isDeepStrictEqual } from "node:util";
import { expect, test } from "vitest";
import { type PreparedEnsemble, prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { failsFromStep } from "../../../engine/odds/fails.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import type { SizeCell } from "../../../engine/size/sizeCell.ts";
import { sizeCells } from "../../../engine/size/sizeCells.ts";
import { sizeMembers } from "../../../engine/size/sizeMembers.ts";
import { SIZE_SCENARIO, sizeMapOf, sizeProblems, wish } from "./sizeScenario.ts";

function ensembleOf(cell: SizeCell, seed = "4127"): PreparedEnsemble {
  const ready = prepareEnsemble(cell.scenario, {}, seed);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.ensemble;
}

test.each([
  ["bank.blockAh=70:130:3", "panels.roof.count=0:8:3"],
  ["bank.startShare=0.85,0.95", "stations.hf.sendingShare=0.2,0.3"],
  ["obstacles.oak.heightM=6,14", "gear.router.working.drawW=10,14"],
  ["place.latitudeDeg=30,55", "sources.generator.startShare=0.45,0.8"],
  ["time.stepMinutes=30,60", "bank.blockAh=90,110"],
  ["panels.roof.module.ratedW=40,80", "panels.roof.count=1,3"],
])("every cell over %s and %s has the odds of its own scenario", (x, y) => {
  const map = sizeMapOf(x, y);
  const part = sizeMembers(map, 3, 40);
  const alone = map.cells.map((cell) => {
    const { belowFromStep, darkFromStep } = runMembers(ensembleOf(cell), 3, 40).outcomes;
    return {
      held: belowFromStep.filter((step, m) => step < 0 && darkFromStep[m]! < 0).length,
      dark: darkFromStep.filter((step) => step >= 0).length,
      goesWithout: belowFromStep.filter((step, m) => step < 0 && darkFromStep[m]! >= 0).length,
    };
  });
  expect(Array.from(part.held)).toEqual(alone.map((cell) => cell.held));
  expect(Array.from(part.dark)).toEqual(alone.map((cell) => cell.dark));
  expect(Array.from(part.goesWithout)).toEqual(alone.map((cell) => cell.goesWithout));
  expect(new Set(part.held).size).toBeGreaterThan(1); // or the map would show nothing
});

test("panels that depend on the bank's volts are worked out for each bank", () => {
  const [roof] = SIZE_SCENARIO.panels!;
  const controller = { ...roof!.controller, kind: "pwm" as const };
  const map = sizeMapOf("bank.blockAh=60:140:5", "panels.roof.count=2,4", {
    ...SIZE_SCENARIO,
    panels: [{ ...roof!, controller }],
  });
  const part = sizeMembers(map, 3, 30);
  const alone = map.cells.map((cell) => {
    const { outcomes } = runMembers(ensembleOf(cell), 3, 30);
    return outcomes.belowFromStep.filter((_, m) => failsFromStep(outcomes, m) < 0).length;
  });
  expect(Array.from(part.held)).toEqual(alone);
  expect(new Set(alone).size).toBeGreaterThan(3);
  expect(map.cells.some(({ run }) => run.fixed.coupled.some((groups) => groups !== 0))).toBe(true);
});

/** Every number in a document with its place; things in lists by their id. */
function numbersIn(value: unknown, at: readonly string[] = []): { at: string; value: number }[] {
  if (typeof value === "number") return [{ at: at.join("."), value }];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    numbersIn(inner, [...at, Array.isArray(value) ? ((inner as { id?: string } | null)?.id ?? key) : key]),
  );
}

/** A second value that the field allows, if any of these is. */
function other(at: string, value: number): string | null {
  const tries = [value * 0.9, value * 1.1, value + 1, value - 1, value + 2, 0.5, 30].filter((each) => each !== value);
  return (
    tries.map((each) => `${at}=${value},${each}`).find((text) => sizeCells(SIZE_SCENARIO, wish(text), null).ok) ?? null
  );
}

/** Two numbers of each part of the document: what cells share is told apart by part. */
const NUMBERS = (() => {
  const all = numbersIn(SIZE_SCENARIO).filter(
    ({ at }) => at !== "version" && !/modes|nominalV|inSeries|monthlyKt/.test(at),
  );
  const parts = new Set(all.map(({ at }) => at.split(".")[0]));
  return [...parts].flatMap((part) => {
    const within = all.filter(({ at }) => at.split(".")[0] === part);
    return [...new Set([within[0]!, within.at(-1)!])];
  });
})();

test("what cells share fits each of them, whichever part of the scenario differs", () => {
  expect(new Set(NUMBERS.map(({ at }) => at.split(".")[0])).size).toBeGreaterThanOrEqual(13);
  for (const { at, value } of NUMBERS) {
    const x = other(at, value);
    if (x === null) throw new Error(`no second value found for ${at}`);
    const map = sizeMapOf(x);
    expect(map.cells).toHaveLength(2);
    // The first cell was prepared with all it needs; what the second shares with it is in question, whichever it is.
    const [first, second] = map.cells;
    for (const cell of first!.prepared.groups === second!.prepared.groups ? [first!, second!] : [second!]) {
      expect(isDeepStrictEqual(met(cell), alone(ensembleOf(cell))), x).toBe(true);
    }
  }
}, 60_000);

/** All that decides a member in a cell. */
function met(cell: SizeCell) {
  const inputs = cell.inputs;
  const { skies } = cell.sky.ensemble;
  const { operators, prepared } = inputs.loads.ensemble;
  return {
    ...decisive(cell.prepared),
    startShare: inputs.startShare,
    spread: inputs.loads.spread,
    wanted: [prepared.loads, prepared.converterShare],
    skies,
    operators,
  };
}

function alone(ensemble: PreparedEnsemble) {
  const { prepared, skies, operators, spread } = ensemble;
  return {
    ...decisive(prepared),
    startShare: prepared.scenario.bank.startShare,
    spread,
    wanted: [prepared.loads, prepared.converterShare],
    skies,
    operators,
  };
}

function decisive(prepared: SizeCell["prepared"]) {
  const { light: _stated, airTempC: _air, remarks: _said, ...rest } = prepared;
  return rest;
}

test("a field that does not exist, holds no number or refuses a value is told in a sentence", () => {
  expect(sizeProblems("bank.blockAhh=1,2")).toMatch(/no field "blockAhh".*did you mean blockAh\?/);
  expect(sizeProblems("panels.barn.count=1,2")).toMatch(/There is no field panels\.barn\.count: .* no "barn" there/);
  expect(sizeProblems("bank.chemistry=1,2")).toMatch(/bank\.chemistry holds "agm" and not a number/);
  expect(sizeProblems("panels=1,2")).toMatch(/panels holds a group and not a number/);
  expect(sizeProblems("bank.blockAh=100,9000")).toMatch(/bank\.blockAh is 9000 but must be a number from 1 to 3000 Ah/);
  expect(sizeProblems("panels.roof.count=1,1.5")).toMatch(/count is 1\.5 but must be a whole number/);
  expect(sizeProblems("bank.blockAh=10,20", "bank.blockAh=10,20")).toMatch(
    /Both directions of the map are bank\.blockAh/,
  );
  expect(sizeProblems("bank.blockAh=1,2", undefined, "{")).toMatch(/must be a scenario document/);
});

test("values that do not go together are refused with both of them", () => {
  const document = { ...SIZE_SCENARIO, panels: [{ ...SIZE_SCENARIO.panels![0]!, inSeries: 2 }] };
  expect(sizeProblems("panels.roof.inSeries=1,2", "panels.roof.count=2,4", document)).toBe("");
  expect(sizeProblems("panels.roof.inSeries=1,4", "panels.roof.count=4,8", document)).toBe("");
  expect(sizeProblems("panels.roof.inSeries=2,4", "panels.roof.count=4,6", document)).toMatch(
    /^With panels\.roof\.inSeries 4 and panels\.roof\.count 6: .*6 modules do not divide into strings of 4/,
  );
  const inside = sizeProblems("panels.roof.at.northM=0,-5", "obstacles.oak.eastM=0,2");
  expect(inside).toMatch(/^With panels\.roof\.at\.northM -5 and obstacles\.oak\.eastM 0: .*inside the trunk of/);
});

test("a map of too many cells is refused with their number and the limit, before any is made", () => {
  expect(sizeProblems("bank.blockAh=1:1000:1000", "panels.roof.count=0:999:1000")).toMatch(
    /1000000 cells .* at most 2500/,
  );
  expect(sizeProblems("bank.blockAh=1:1000:999999999")).toMatch(/999999999 cells/);
});

test("steps of a field of whole numbers are whole, each once; a map of one cell is a map", () => {
  expect(sizeMapOf("panels.roof.count=0:4:9").x.values).toEqual([0, 1, 2, 3, 4]);
  expect(sizeMapOf("bank.startShare=0.1:0.4:4").x.values).toEqual([0.1, 0.2, 0.3, 0.4]);
  const one = sizeMapOf("bank.blockAh=60", "panels.roof.count=2");
  expect(one.cells).toHaveLength(1);
  expect(one.x.present).toBe(100);
});

test("cells share skies, loads and shade, however many there are", () => {
  const map = sizeMapOf("bank.blockAh=40:80:5", "panels.roof.count=0:4:5");
  expect([map.cells.length, map.skies.length, map.loads.length]).toEqual([25, 1, 1]);
  expect(new Set(map.cells.map((cell) => cell.prepared.groups)).size).toBe(5);
  expect(new Set(map.cells.map((cell) => cell.prepared.bank)).size).toBe(5);
});
