import { NOTEBOOK_VERSION, type Notebook } from "../../engine/notebook/notebook.ts";
import type { Change } from "../../engine/scenario/change.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import walnutGrove from "../../scenarios/walnut-grove.json";
import example from "./example.json";

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
    title: example.title,
    seed: "4127",
    members: 1000,
    scenarios: scenarios as Notebook["scenarios"],
    looks: ["meadow", "roof", "two-blocks"],
    entries: example.entries as unknown as Notebook["entries"],
  };
}
