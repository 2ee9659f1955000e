import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { goTogether } from "../../../engine/reach/lever.ts";
import { mergedScenario } from "../../../engine/reach/mergedScenario.ts";
import { reachPlan } from "../../../engine/reach/reachPlan.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts";

test.each(["walnut-grove", "peat-moor", "polar-hut"])(
  "two levers merged are what the document with both reads as: %s",
  (name) => {
    const document = JSON.parse(readFileSync(`scenarios/${name}.json`, "utf8"));
    const ready = reachPlan(document);
    if (!ready.ok) throw new Error(ready.problems[0]!.message);
    const { levers, scenario } = ready.plan;
    const read = (changes: readonly Change[]): Scenario => {
      const changed = applyChanges(document, changes);
      if (!changed.ok) throw new Error(changed.problems[0]!.message);
      const found = readScenario(changed.document);
      if (!found.ok) throw new Error(found.problems[0]!.message);
      return found.scenario;
    };
    const alone = levers.map((lever) => read(lever.amounts[0]!.changes));
    let merges = 0;
    for (const [i, one] of levers.entries()) {
      // Every lever with the next few after it: those of one list stand side by side.
      for (const [j, other] of levers.entries()) {
        if (j <= i || j > i + 4 || !goTogether(one, other)) continue;
        const merged = mergedScenario(scenario, [alone[i]!, alone[j]!]);
        if (merged === null) continue;
        merges++;
        expect(merged).toEqual(read([...one.amounts[0]!.changes, ...other.amounts[0]!.changes]));
      }
    }
    expect(merges).toBeGreaterThan(levers.length);
  },
);

test("two that change the same thing are not merged", () => {
  const document = JSON.parse(readFileSync("scenarios/walnut-grove.json", "utf8"));
  const with_ = (to: number) => {
    const changed = applyChanges(document, [{ at: "bank.blockAh", to }]);
    const read = changed.ok ? readScenario(changed.document) : changed;
    if (!read.ok) throw new Error("does not read");
    return read.scenario;
  };
  expect(mergedScenario(with_(280), [with_(300), with_(320)])).toBe(null);
});
