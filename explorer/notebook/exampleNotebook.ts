import type { Change, ScenarioInput } from "../../engine/index.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { NOTEBOOK_VERSION } from "../../engine/notebook/notebook.ts";
import walnutGrove from "../../scenarios/walnut-grove.json";

const ANSWER = `The van's roof stands in leaf shade for most of the day, so it brings only **{sun, roof}** over the event, and we want **{wanted, roof}**. On the roof alone the bank holds to Sunday in **{holds, roof}** skies, and something goes dark in **{dark, roof}**.

With *two folding panels in the meadow* it holds in **{holds, meadow}**, and half of the skies never leave us under {lowest, meadow}.`;

const PANELS = `They earn their place in the car: they change the outcome in **{saved, meadow over roof}** skies, for {more mass, meadow over roof}, {more work, meadow over roof} of setting up and {more cost, meadow over roof} in money. A second block is the other way to get there: the roof alone with two blocks holds in **{holds, two-blocks}** skies, but it weighs {more mass, two-blocks over roof} more and costs {more cost, two-blocks over roof}.`;

/** What a first visit shows: an invented club in an invented place, with its questions answered from the results. */
export function exampleNotebook(id: string): Notebook {
  const { variants, $schema, ...document } = walnutGrove;
  const changesOf = (variant: string) => variants.find((each) => each.id === variant)!.changes as unknown as Change[];
  const scenarios: unknown = [
    { id: "roof", name: "Roof alone", document: document as unknown as ScenarioInput },
    { id: "meadow", name: "Roof and meadow", basedOn: "roof", changes: changesOf("meadow") },
    { id: "two-blocks", name: "Roof, two blocks", basedOn: "roof", changes: changesOf("two-blocks") },
  ];
  return {
    format: "duskline-notebook",
    version: NOTEBOOK_VERSION,
    id,
    title: "Autumn weekend in the walnut grove",
    seed: "4127",
    members: 1000,
    scenarios: scenarios as Notebook["scenarios"],
    entries: [
      { id: "answer", kind: "note", title: "Will it hold?", doc: { text: ANSWER } },
      {
        id: "forecast",
        kind: "forecast",
        title: "The bank under a thousand skies",
        doc: { scenarios: ["meadow", "roof"] },
      },
      { id: "panels", kind: "note", title: "Do the extra panels earn their place?", doc: { text: PANELS } },
      {
        id: "versus",
        kind: "versus",
        title: "The same skies, with and without",
        doc: { first: "roof", second: "meadow" },
      },
      {
        id: "sizing",
        kind: "sizing",
        title: "How big a bank, how many panels in the meadow?",
        doc: {
          scenario: "meadow",
          across: { at: "bank.blockAh", values: [140, 200, 240, 280, 350, 420, 560] },
          up: { at: "panels.meadow.count", values: [0, 2, 4, 6] },
          targetIn100: 95,
          autonomyDays: 2,
        },
      },
      { id: "drivers", kind: "drivers", title: "What decides it?", doc: { scenario: "roof" } },
      { id: "plan", kind: "scenario", title: "The plan: roof alone", doc: { scenario: "roof" } },
      {
        id: "plan-meadow",
        kind: "scenario",
        title: "The plan with the meadow",
        folded: true,
        doc: { scenario: "meadow" },
      },
      { id: "run", kind: "run", title: "One run, step by step", doc: { scenario: "roof" } },
      { id: "shade", kind: "shade", title: "Who gets the sun?", folded: true, doc: { scenario: "meadow" } },
      { id: "days", kind: "days", title: "The same days in figures", doc: { scenario: "roof" } },
      { id: "ledger", kind: "ledger", title: "Where the energy went", doc: { scenario: "roof" } },
      { id: "cautions", kind: "cautions", title: "What this leaves out, and cautions", doc: {} },
    ],
  };
}
