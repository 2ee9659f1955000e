import { expect, test } from "vitest";
import { applyChanges } from "../../engine/scenario/applyChanges.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { changesOf, planGroups, planOf } from "../../explorer/parts/plan.ts";
import { problemPlace, problemSentence } from "../../explorer/parts/problemPlace.ts";
import { EXAMPLE } from "./exampleRun.ts";

const plan = planOf(EXAMPLE);
const read = (changes: ReturnType<typeof changesOf>) => {
  const changed = applyChanges(EXAMPLE, changes);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  return { document: changed.document as ScenarioInput, result: readScenario(changed.document) };
};

test("an untouched plan changes nothing", () => {
  expect(changesOf(EXAMPLE, plan)).toEqual([]);
});

test("twice the ampere-hours halves the stated resistance and doubles the stated limits", () => {
  const { result } = read(changesOf(EXAMPLE, { ...plan, inParallel: 2 }));
  if (!result.ok) throw new Error("reads");
  const { bank } = result.scenario;
  expect(bank.inParallel).toBe(2);
  expect(bank.internalResistanceOhm).toBeCloseTo(EXAMPLE.bank.internalResistanceOhm! / 2, 9);
  expect(bank.maxDischargeA).toBeCloseTo(EXAMPLE.bank.maxDischargeA! * 2, 9);
});

test("one sky word reaches every day that the event touches, and air and haze stay", () => {
  const document = { ...EXAMPLE, weather: { kind: "typical" as const, linkeTurbidity: 4 } };
  const changes = changesOf(document, { ...plan, sky: "overcast" });
  expect(changes).toEqual([
    { at: "weather", to: { kind: "words", linkeTurbidity: 4, days: ["overcast", "overcast", "overcast", "overcast"] } },
  ]);
});

test("every panel group has its count, and an edited one is sent", () => {
  expect(planGroups(EXAMPLE).map((group) => group.id)).toEqual(["roof"]);
  expect(changesOf(EXAMPLE, { ...plan, panels: { roof: 4 } })).toEqual([{ at: "panels.roof.count", to: 4 }]);
});

test("what cannot be read stays text, so that the engine can say what is wrong with it", () => {
  const document = { ...EXAMPLE, bank: { ...EXAMPLE.bank, reserveShare: "2o" as unknown as number } };
  expect(planOf(document).reservePercent).toBe("2o");
});

test.each([
  { change: { blockAh: 9000 }, place: "blockAh", says: /^A block is 9000 but must be a number from 1 to \d+ Ah/ },
  { change: { blockAh: "many" }, place: "blockAh", says: /^A block is "many" but must be a number/ },
  { change: { inParallel: 1.5 }, place: "inParallel", says: /side by side is 1\.5 but must be a whole number/ },
  { change: { reservePercent: 99 }, place: "reservePercent", says: /^The reserve .* is 0\.99 but must be/ },
  { change: { panels: { ...plan.panels, roof: -1 } }, place: "panels.roof", says: /^The number of panels is -1/ },
])("$place: a wrong value comes back to its field as a sentence", ({ change, place, says }) => {
  const { document, result } = read(changesOf(EXAMPLE, { ...plan, ...change }));
  if (result.ok) throw new Error("must be refused");
  expect(result.problems.map((problem) => problemPlace(problem, document))).toEqual([place]);
  expect(problemSentence(result.problems[0]!.message)).toMatch(says);
});
