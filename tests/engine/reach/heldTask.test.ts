import { expect, test } from "vitest";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { failsFromStep } from "../../../engine/odds/fails.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import { mergeReach, reachTask } from "../../../engine/reach/reachTask.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { makeTaskStore } from "../../../engine/task/taskStore.ts";
import { oneMapTask } from "../pool/oneEnsemble.ts";

const PLAN = oneMapTask(0, 1).document as ScenarioInput;
/** A pack whose limit trips on transmit peaks long before the charge is low: it keeps its reserve and something goes without. */
const WEAK: ScenarioInput = { ...PLAN, bank: { ...PLAN.bank, blockAh: 150, maxDischargeA: 9 } };
const MEMBERS = 40;

function read(document: ScenarioInput): Scenario {
  const found = readScenario(document);
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.scenario;
}

function outcomesOf(scenario: Scenario) {
  const ready = prepareEnsemble(scenario, {}, "4127");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const { outcomes } = runMembers(ready.ensemble, 0, MEMBERS);
  return Array.from({ length: MEMBERS }, (_, m) => failsFromStep(outcomes, m));
}

const store = makeTaskStore();
function counted(scenario: Scenario, from: number, to: number, mayMiss = MEMBERS) {
  const task = { base: read(PLAN), scenario, surroundings: {}, seed: "4127", from, to, mayMiss, surroundingsKey: null };
  const work = reachTask.work(task, store, () => {});
  if (!work.ok) throw new Error(work.problems[0]!.message);
  const { membersAtOnce, run, part } = work.value;
  for (let next = from; next < to; next += membersAtOnce) run(next, Math.min(to, next + membersAtOnce));
  return part();
}

/** Falls under its reserve in the last hour alone: two days without sun, and the reserve where the charge ends. */
const endsUnder: ScenarioInput = {
  ...PLAN,
  panels: [],
  sources: [],
  stations: [],
  bank: { chemistry: "lfp", blockAh: 60, startShare: 0.8, reserveShare: 0.4 },
};

test.each([
  ["plan", PLAN],
  ["weak", WEAK],
  ["without sun", endsUnder],
])("members that hold are those that odds counts, in one stretch or in several: %s", (_, document) => {
  const scenario = read(document);
  const fails = outcomesOf(scenario);
  const held = fails.filter((step) => step < 0).length;
  expect(counted(scenario, 0, MEMBERS)).toMatchObject({ from: 0, to: MEMBERS, held });
  const parts = [counted(scenario, 17, MEMBERS), counted(scenario, 0, 17)];
  expect(mergeReach(parts)).toMatchObject({ from: 0, to: MEMBERS, held });
});

test("the charge that is left at the end counts: a reserve just above it is not held", () => {
  const { bank } = endsUnder;
  const scenario = read(endsUnder);
  const ready = prepareEnsemble(scenario, {}, "4127");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const { endShare, lowestShare } = runMembers(ready.ensemble, 0, MEMBERS).outcomes;
  expect(Array.from(lowestShare)).toEqual(Array.from(endShare));
  const reserveShare = [...endShare].sort((a, b) => a - b)[MEMBERS / 2]! + 1e-6;
  const held = counted(read({ ...endsUnder, bank: { ...bank, reserveShare } }), 0, MEMBERS).held;
  expect(held).toBe(endShare.filter((share) => share >= reserveShare).length);
  expect(held).toBeGreaterThan(0);
});

test("a task ends once more miss than may, and what it has counted until then is right", () => {
  const scenario = read(PLAN);
  const fails = outcomesOf(scenario);
  const misses = fails.filter((step) => step >= 0).length;
  expect(misses).toBeGreaterThan(8);
  const part = counted(scenario, 0, MEMBERS, 2);
  expect(part.to).toBeLessThan(MEMBERS);
  expect(part.held).toBe(fails.slice(0, part.to).filter((step) => step < 0).length);
  expect(part.to - part.held).toBeGreaterThan(2);
  expect(counted(scenario, 0, MEMBERS, misses)).toMatchObject({ to: MEMBERS });
});

test("parts that do not belong together are refused", () => {
  const part = { seed: "a", from: 0, to: 4, held: 2, lacksSurroundings: false };
  expect(() => mergeReach([])).toThrow("at least one part");
  expect(() => mergeReach([part, { ...part, from: 8, to: 9 }])).toThrow("must follow one another");
  expect(() => mergeReach([part, { ...part, seed: "b", from: 4, to: 9 }])).toThrow("one seed");
});
