/**
 * What is kept from one scenario for the next is never anything that the next one would have otherwise: every field that
 * an ensemble reads is changed, and the members run with what is kept are those run again, to the last bit.
 */
import { expect, test } from "vitest";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { runMembers } from "../../engine/odds/odds.ts";
import { identityOf, makeReuse, type Reuse } from "../../engine/run/reuse.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { Scenario } from "../../engine/scenario/scenario.ts";
import { bitsOf } from "../bitsOf.ts";
import { EVERYTHING } from "./everything.ts";

/** Each number a little other, each flag turned, each text left as it is: one changed document for each place. */
function changedInOnePlace(root: unknown): unknown[] {
  const found: unknown[] = [];
  const walk = (value: unknown, put: (changed: unknown) => unknown): void => {
    if (typeof value === "number") found.push(put(Number.isInteger(value) ? value + 1 : value * 0.9));
    else if (typeof value === "boolean") found.push(put(!value));
    else if (Array.isArray(value)) {
      if (value.length > 0) found.push(put(value.slice(0, -1)));
      for (const [k, item] of value.entries()) walk(item, (changed) => put(value.with(k, changed)));
    } else if (typeof value === "object" && value !== null) {
      for (const [key, inner] of Object.entries(value)) walk(inner, (changed) => put({ ...value, [key]: changed }));
    }
  };
  walk(root, (changed) => changed);
  return found;
}

const climateless = {};
const bits = (scenario: Scenario, reuse?: Reuse) => {
  const ready = prepareEnsemble(scenario, climateless, "4127", reuse);
  return ready.ok ? bitsOf(runMembers(ready.ensemble, 0, 1).outcomes) : JSON.stringify(ready.problems);
};

test("whatever is changed, members run with what is kept are those run again", () => {
  const full = EVERYTHING["with sources"]!;
  // Few steps and few points on a panel: many scenarios are prepared, each twice.
  const time = { ...full.time, end: "2026-06-13T06:00", stepMinutes: 60 };
  const document = { ...full, time };
  let compared = 0;
  const reuse = makeReuse(200);
  const base = readScenario(document);
  if (!base.ok) throw new Error(base.problems[0]!.message);
  expect(bits(base.scenario, reuse)).toEqual(bits(base.scenario));
  for (const changed of changedInOnePlace(document)) {
    const read = readScenario(changed);
    if (!read.ok) continue;
    compared++;
    expect(bits(read.scenario, reuse)).toEqual(bits(read.scenario));
  }
  // And the first one again, after all that the others may have written into what it shares with them.
  expect(bits(base.scenario, reuse)).toEqual(bits(base.scenario));
  expect(compared).toBeGreaterThan(100);
});

test("a scenario that differs in its bank shares sky, panels and operators, and no more is kept than was asked", () => {
  const made: string[] = [];
  const watch =
    (reuse: Reuse): Reuse =>
    (what, of, prepare) =>
      reuse(what, of, () => {
        made.push(what);
        return prepare();
      });
  const read = readScenario(EVERYTHING.full!);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const larger = { ...read.scenario, bank: { ...read.scenario.bank, blockAh: read.scenario.bank.blockAh * 2 } };
  const reuse = watch(makeReuse(200));
  prepareEnsemble(read.scenario, climateless, "4127", reuse);
  expect(made).toContain("skies");
  made.length = 0;
  prepareEnsemble(larger, climateless, "4127", reuse);
  expect(made).toEqual(["bank"]);
  made.length = 0;
  prepareEnsemble({ ...larger, operators: { ...larger.operators, byHourShare: 0.1 } }, climateless, "4127", reuse);
  expect(made).toEqual(["operators"]);
  made.length = 0;
  prepareEnsemble(larger, climateless, "4128", reuse);
  expect(made).toEqual(["operators"]);
  const short = watch(makeReuse(1));
  prepareEnsemble(read.scenario, climateless, "4127", short);
  made.length = 0;
  prepareEnsemble(read.scenario, climateless, "4127", short);
  expect(made).toContain("sky");
});

test("one object has one number", () => {
  const [a, b] = [{}, {}];
  expect(identityOf(a)).toBe(identityOf(a));
  expect(identityOf(a)).not.toBe(identityOf(b));
  expect(identityOf(undefined)).toBe(0);
});
