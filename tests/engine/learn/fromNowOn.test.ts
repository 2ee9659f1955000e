import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { changesToTry } from "../../../engine/learn/changesToTry.ts";
import { fromNowOn } from "../../../engine/learn/fromNowOn.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { type Prepared, prepare } from "../../../engine/run/prepare.ts";
import {
  BANK_A,
  BANK_CONNECTED,
  BANK_SLOTS,
  makeRunRows,
  ROW_SLOTS,
  ROW_STORED_AH,
  type RunRows,
} from "../../../engine/run/runRows.ts";
import {
  stepLaneFigures,
  stepLaneLight,
  stepLaneWanted,
  stepPanels,
  stepPower,
  stepRun,
} from "../../../engine/run/stepRun.ts";
import { CONNECTED, LAST_A, STORED_AH } from "../../../engine/run/stepState.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts"; // biome-ignore format: a list of names

const climate = await loadClimateTables();

function read(document: unknown): Scenario {
  const result = readScenario(document);
  if (!result.ok) throw new Error(result.problems[0]!.message);
  return result.scenario;
}

function prepared(scenario: Scenario, changes: readonly Change[] = []): Prepared {
  const changed = applyChanges(scenario, changes);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  const ready = prepare(read(JSON.parse(JSON.stringify(changed.document))), { climate });
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.prepared;
}

function ran(of: Prepared): RunRows {
  const run = makeRunRows(of);
  stepRun(of, of.light, of.airTempC, of.inputs, run);
  return run;
}

const charges = ({ rows }: RunRows, steps: number) =>
  Array.from({ length: steps }, (_, i) => rows[i * ROW_SLOTS + ROW_STORED_AH]!);

/** Litres that each source still has at a step. */
function fuelAt(of: Prepared, run: RunRows, step: number): number[] {
  return of.sources.map(({ fuelL }, s) => {
    let burntL = 0;
    for (let i = 0; i < step; i++) burntL += run.parts[i * run.partStride + run.fuelAt + s]!;
    return fuelL - burntL;
  });
}

/** The later plan, run from a step on with everything as the earlier one left it there. */
function joined(before: Prepared, after: Prepared, step: number): number[] {
  const first = ran(before);
  const run = makeRunRows(after);
  stepLaneFigures(after, after.inputs.figures, run, 0);
  stepLaneWanted(after.inputs.wantedW, run, 0);
  stepLaneLight(after, after.light, after.airTempC, run, 0);
  run.state[STORED_AH] = first.rows[step * ROW_SLOTS + ROW_STORED_AH]!;
  run.state[LAST_A] = first.bankRows[(step - 1) * BANK_SLOTS + BANK_A]!;
  run.state[CONNECTED] = first.bankRows[(step - 1) * BANK_SLOTS + BANK_CONNECTED]!;
  fuelAt(before, first, step).forEach((litres, s) => {
    run.fuelLeftL[s] = litres;
  });
  stepPanels(after, run, 1);
  stepPower(after, run, 1, step);
  const { steps } = before.grid;
  return [...charges(first, step), ...charges(run, steps).slice(step)];
}

describe.each([
  ["walnut-grove", "2026-10-10T08:00"],
  ["peat-moor", null],
  ["polar-hut", null],
] as const)("%s: changed from a time on is the plan as it was until then and the changed one after, joined by how things stand", (name, at) => {
  const scenario = read(readFileSync(`scenarios/${name}.json`, "utf8"));
  const before = prepared(scenario);
  const { grid } = before;
  // Where nothing is said, a morning in the middle of the event; no generator runs then.
  const middle = grid.localMinute.findIndex((minute, i) => i > grid.steps / 2 && Math.abs(minute - (8 * 60 + grid.stepMs / 120_000)) < 1e-6);
  const local = at ?? `${grid.dates[grid.localDay[middle]!]}T08:00`;
  const step = grid.localMinute.findIndex((minute, i) => grid.dates[grid.localDay[i]!] === local.slice(0, 10) && Math.abs(minute - (8 * 60 + grid.stepMs / 120_000)) < 1e-6);
  const fuel = fuelAt(before, ran(before), step);
  const fuelOf = (id: string) => fuel[before.sources.findIndex((source) => source.id === id)]!;

  test.each(changesToTry(scenario).map(({ id, changes }) => [id, changes] as const))("%s", (_, changes) => {
    const onward = fromNowOn(scenario, changes, local, "then", fuelOf);
    expect(onward).not.toBeNull();
    const whole = charges(ran(prepared(scenario, onward!)), grid.steps);
    const halves = joined(before, prepared(scenario, changes), step);
    const away = whole.map((ah, i) => Math.abs(ah - halves[i]!));
    expect(Math.max(...away)).toBeLessThan(1e-6);
    // The past is the plan's own.
    const planned = charges(ran(before), grid.steps);
    expect(whole.slice(0, step + 1).every((ah, i) => Math.abs(ah - planned[i]!) < 1e-6)).toBe(true);
  });
}); // biome-ignore format: long lines of a table

test("what cannot be from a time on is not made so", () => {
  const scenario = read(readFileSync("scenarios/walnut-grove.json", "utf8"));
  expect(fromNowOn(scenario, [{ at: "bank.blockAh", to: 400 }], "2026-10-10T08:00", "then", () => 0)).toBeNull();
});

test.each([
  [{ until: "2026-02-30T10:00" }, /gear\.lamps\.until is "2026-02-30T10:00", which is no date/],
  [{ from: "2026-10-10T10:00", until: "2026-10-10T10:00" }, /until is "2026-10-10T10:00", which is not after its from/],
  [{ from: "noon" }, /from is "noon" but must be a local time/],
])("times that are none are refused: %j", (times, sentence) => {
  const document = JSON.parse(readFileSync("scenarios/walnut-grove.json", "utf8"));
  Object.assign(
    document.gear.find(({ id }: { id: string }) => id === "lamps"),
    times,
  );
  const result = readScenario(document);
  expect(result.ok ? "" : result.problems.map(({ message }) => message).join(" ")).toMatch(sentence);
});
