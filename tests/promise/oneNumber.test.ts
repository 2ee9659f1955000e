import { expect, test } from "vitest";
import { driversOf } from "../../engine/answers/drivers/ask.ts";
import { oddsOf } from "../../engine/answers/forecast/ask.ts";
import { packingOf } from "../../engine/answers/packing/ask.ts";
import { reachOf } from "../../engine/answers/reach/ask.ts";
import { sizesOf } from "../../engine/answers/sizing/ask.ts";
import { presentCell } from "../../engine/answers/sizing/sizingWords.ts";
import { versusOf } from "../../engine/answers/versus/ask.ts";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { failsFromStep, goesWithout } from "../../engine/odds/fails.ts";
import { replayMember, runMembers } from "../../engine/odds/odds.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { oneMapTask } from "../engine/pool/oneEnsemble.ts";
import { reportOf } from "../explorer/report/reportOf.ts";

const MEMBERS = 110;
const PLAN = oneMapTask(0, 1).document as ScenarioInput;
/** A pack whose limit trips on the larger transmit peaks long before the charge is low: it keeps its reserve and something goes without. */
const WEAK: ScenarioInput = { ...PLAN, bank: { ...PLAN.bank, blockAh: 150, maxDischargeA: 9 } };
/** A bank so small that it falls under its reserve in one sky and goes without in another. */
const SMALL: ScenarioInput = { ...PLAN, bank: { ...PLAN.bank, blockAh: 75, maxDischargeA: 11 } };

const climate = await loadClimateTables();

function ensembleOf(document: ScenarioInput) {
  const read = readScenario(document);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const ready = prepareEnsemble(read.scenario, { climate }, "4127");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.ensemble;
}

test.each([
  ["plan", PLAN],
  ["weak", WEAK],
  ["small", SMALL],
])("a member holds if its trace never shows less than the reserve, nor a load that goes without: %s", (_, document) => {
  const ensemble = ensembleOf(document);
  const { outcomes } = runMembers(ensemble, 0, 40);
  const { reserveAh, fullAh } = ensemble.prepared.bank;
  for (let m = 0; m < 40; m++) {
    const { record, verdict } = replayMember(ensemble, m);
    const below = Array.from(record.storedAh).findIndex((storedAh) => storedAh < reserveAh - 1e-9 * fullAh);
    const dark = Array.from(record.unservedW).findIndex((watts) => watts > 1e-6);
    const first = [below, dark].filter((step) => step >= 0);
    expect([m, failsFromStep(outcomes, m)]).toEqual([m, first.length === 0 ? -1 : Math.min(...first)]);
    expect([m, verdict.holds]).toEqual([m, first.length === 0]);
    expect([m, goesWithout(outcomes, m)]).toEqual([m, below < 0 && dark >= 0]);
  }
});

test("one scenario has one number wherever a notebook says it, and on the command line", async () => {
  const documents = { plan: PLAN, weak: WEAK, small: SMALL };
  const ids = Object.keys(documents) as (keyof typeof documents)[];
  const sizing = (scenario: string) => ({
    scenario,
    across: { at: "bank.blockAh", values: [60, 75, 150] },
    targetIn100: 90,
    autonomyDays: 2,
  });
  const reaching = (scenario: string) => ({
    scenario,
    targetIn100: 90,
    most: "money" as const,
    locked: [],
    lent: [],
  });
  const packing = (scenario: string) => ({ scenario, targetIn100: 90, most: "mass" as const, lent: [] });
  /** The set that takes everything of a list that is what the plan holds: the plan itself. */
  const wholeOf = (id: string) => {
    const { report, things } = packingOf(page, packing(id)).result!;
    return report.sets!.find(({ take }) => take.every((count, t) => count === things[t]!.count))!.holds!;
  };
  const entry = (kind: string, id: string, doc: object) => ({ id: `${kind}-${id}`, kind, title: kind, doc });
  const notebook = {
    ...exampleNotebook("probe"),
    seed: "4127",
    members: MEMBERS,
    scenarios: ids.map((id) => ({ id, name: id, document: documents[id] })),
    entries: [
      entry("forecast", "all", { scenarios: ids }),
      entry("versus", "weak", { scenarios: ["plan", "weak"] }),
      entry("versus", "small", { scenarios: ["small", "plan"] }),
      ...ids.flatMap((id) => [entry("sizing", id, sizing(id)), entry("drivers", id, { scenario: id })]),
      ...ids.map((id) => entry("reach", id, reaching(id))),
      ...ids.map((id) => entry("packing", id, packing(id))),
    ],
  } as unknown as Notebook;
  const made = await reportOf(notebook);
  if (!made.ok) throw new Error(made.sentences.join(" "));
  const { page } = made;
  const cellOf = (id: string) => {
    const picture = sizesOf(page, sizing(id)).result!;
    const { row, column } = presentCell(picture);
    return picture.report.rows[row]!.cells[column]!;
  };
  const [weaker, smaller] = [versusOf(page, "plan", "weak").result!, versusOf(page, "small", "plan").result!];
  const said = {
    plan: [weaker.first.holds, smaller.second.holds],
    weak: [weaker.second.holds],
    small: [smaller.first.holds],
  };
  const counts = ids.map((id) => {
    const { outcomes } = runMembers(ensembleOf(documents[id]), 0, MEMBERS);
    const count = outcomes.belowFromStep.filter((_, m) => failsFromStep(outcomes, m) < 0).length;
    const all = [
      oddsOf(page, id).result!.report.holds,
      ...said[id],
      cellOf(id).holds,
      driversOf(page, id).result!.report.holds,
      reachOf(page, reaching(id)).result!.report.base,
      wholeOf(id),
    ];
    expect([id, all.map((odds) => [odds.count, odds.of])]).toEqual([id, all.map(() => [count, MEMBERS])]);
    expect(cellOf(id).goesWithout.count).toBe(oddsOf(page, id).result!.report.goesWithout.count);
    return count;
  });
  expect(new Set(counts).size).toBe(3);
  expect(oddsOf(page, "weak").result!.report.goesWithout.count).toBeGreaterThan(0);
});
