import { firstEntries } from "../../engine/notebook/firstEntries.ts";
import { NOTEBOOK_VERSION, type Notebook } from "../../engine/notebook/notebook.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { problemSentences } from "../../engine/words/problemSentences.ts";
import { scenariosOfFile } from "../notebook/scenariosOfFile.ts";

/** A notebook about one scenario file: its variants become scenarios that are based on it. */
export function notebookOf(source: ScenarioInput, id: string): Notebook {
  const scenarios = scenariosOfFile(source, { id: "plan", name: "The plan as it is" }, []);
  const [base, ...others] = scenarios.map((scenario) => scenario.id);
  return {
    format: "duskline-notebook",
    version: NOTEBOOK_VERSION,
    id,
    title: (source.name || "A plan").slice(0, 120),
    seed: "4127",
    members: 1000,
    scenarios: scenarios as unknown as Notebook["scenarios"],
    entries: firstEntries([base!, ...others], source),
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
