import type { Notebook } from "../../engine/notebook/notebook.ts";
import { readNotebook } from "../../engine/notebook/readNotebook.ts";
import { scenarioDocument } from "../../engine/notebook/scenarioDocument.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import { salvagedNotebook } from "./salvage/salvagedNotebook.ts";

export interface Checked {
  readonly notebook: Notebook;
  /** What of it could not be read, a sentence each; nothing where all of it was. */
  readonly missing: readonly string[];
  /** What keeps scenarios of it from being worked out, a sentence for each such scenario. */
  readonly wrong: readonly string[];
}

/**
 * Reads a notebook that comes from elsewhere whole before anything of it is kept or shown: its own frame, and each of its scenarios by the
 * engine. Where not all can be read, what can be is handed back with what is missing.
 */
export function checkedNotebook(
  text: string,
): ({ readonly ok: true } & Checked) | { readonly ok: false; readonly sentences: readonly string[] } {
  const read = readNotebook(text);
  if (read.ok) return { ok: true, notebook: read.notebook, missing: [], wrong: wrongScenarios(read.notebook) };
  if (read.isHarmful) return read;
  const salvaged = salvagedNotebook(JSON.parse(text), "notebook");
  if (!salvaged.ok) return read;
  return { ok: true, notebook: salvaged.notebook, missing: salvaged.missing, wrong: wrongScenarios(salvaged.notebook) };
}

function wrongScenarios(notebook: Notebook): string[] {
  return notebook.scenarios.flatMap(({ id, name }) => {
    const found = scenarioDocument(notebook, id);
    if (!found.ok) return [found.sentence];
    const scenario = readScenario(found.document);
    if (scenario.ok) return [];
    const [first, ...others] = scenario.problems;
    return [`${name}: ${first!.message}${others.length > 0 ? ` And ${others.length} more.` : ""}`];
  });
}
