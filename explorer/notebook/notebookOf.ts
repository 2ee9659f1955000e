import "../../engine/scenario/zonesHere.ts";
import { readScenario, type ScenarioInput } from "../../engine/index.ts";
import type { Entry, Notebook } from "../../engine/notebook/notebook.ts";
import { NOTEBOOK_VERSION } from "../../engine/notebook/notebook.ts";
import { problemSentences } from "../../engine/words/problemSentences.ts";
import { scenariosOfFile } from "./scenariosOfFile.ts";

/** A notebook about one scenario file: its variants become scenarios that are based on it. */
export function notebookOf(source: ScenarioInput, id: string): Notebook {
  const scenarios = scenariosOfFile(source, { id: "plan", name: "The plan as it is" }, []);
  const base = scenarios[0]!;
  const other = scenarios[1]?.id;
  const entries: Entry[] = [
    {
      id: "forecast",
      kind: "forecast",
      title: "Will it hold?",
      doc: { scenarios: other === undefined ? [base.id] : [other, base.id] },
    },
    ...(other === undefined
      ? []
      : [
          {
            id: "versus",
            kind: "versus" as const,
            title: "What does it change?",
            doc: { first: base.id, second: other },
          },
        ]),
    { id: "scenario", kind: "scenario", title: "The plan", doc: { scenario: base.id } },
    { id: "run", kind: "run", title: "One run, step by step", doc: { scenario: base.id } },
    { id: "ledger", kind: "ledger", title: "Where the energy went", doc: { scenario: base.id } },
    { id: "cautions", kind: "cautions", title: "What this leaves out, and cautions", doc: {} },
  ];
  return {
    format: "duskline-notebook",
    version: NOTEBOOK_VERSION,
    id,
    title: (source.name || "A plan").slice(0, 120),
    seed: "4127",
    members: 1000,
    scenarios: scenarios as unknown as Notebook["scenarios"],
    entries,
  };
}

/** A notebook about a scenario file's text, or what is wrong with it. */
export function notebookFromScenario(
  text: string,
  id: string,
): { ok: true; notebook: Notebook } | { ok: false; sentences: readonly string[] } {
  const read = readScenario(text);
  if (!read.ok) return { ok: false, sentences: problemSentences(read.problems, 8) };
  return { ok: true, notebook: notebookOf(JSON.parse(text) as ScenarioInput, id) };
}
