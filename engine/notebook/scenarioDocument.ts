import { applyChanges } from "../scenario/applyChanges.ts";
import type { Change } from "../scenario/change.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";
import type { Notebook, NotebookScenario } from "./notebook.ts";
import { whyMisshapen } from "./whyMisshapen.ts";

export type ScenarioDocument =
  | { readonly ok: true; readonly document: ScenarioInput }
  | { readonly ok: false; readonly sentence: string };

/** Longest chain of scenarios based on one another. */
const LONGEST_CHAIN = 40;

/**
 * A scenario's whole document: its base's, and so on down, with each one's changes worked in. Whatever it is given as has the frame of
 * a document; whether its values make sense is the engine's to say.
 */
export function scenarioDocument(notebook: Notebook, id: string): ScenarioDocument {
  const chain: { name: string; changes: readonly Change[] }[] = [];
  let scenario = scenarioIn(notebook, id);
  for (let depth = 0; depth < LONGEST_CHAIN; depth++) {
    if (scenario === null) return { ok: false, sentence: `There is no scenario ${id} in this notebook.` };
    if ("document" in scenario) {
      let document: unknown = scenario.document;
      const misshapen = whyMisshapen(document);
      if (misshapen !== null) return { ok: false, sentence: `${scenario.name}: ${misshapen}` };
      for (const { name, changes } of chain.reverse()) {
        const changed = applyChanges(document, changes);
        if (!changed.ok) return { ok: false, sentence: `${name}: ${changed.problems[0]!.message}` };
        document = changed.document;
        const why = whyMisshapen(document);
        if (why !== null) return { ok: false, sentence: `${name}: ${why}` };
      }
      return { ok: true, document: document as ScenarioInput };
    }
    chain.push({ name: scenario.name, changes: scenario.changes });
    scenario = scenarioIn(notebook, scenario.basedOn);
  }
  return { ok: false, sentence: `Scenario ${id} is based on itself, by way of others.` };
}

/** Changes of a scenario that find no place in what it is based on, or make no document of it, by their number in its list. */
export function lostChanges(notebook: Notebook, id: string): { readonly number: number; readonly message: string }[] {
  const scenario = scenarioIn(notebook, id);
  if (scenario === null || "document" in scenario) return [];
  const base = scenarioDocument(notebook, scenario.basedOn);
  if (!base.ok) return [];
  let document: unknown = base.document;
  return scenario.changes.flatMap((change, number) => {
    const changed = applyChanges(document, [change]);
    if (!changed.ok) return [{ number, message: changed.problems[0]!.message }];
    const why = whyMisshapen(changed.document);
    if (why !== null) return [{ number, message: why }];
    document = changed.document;
    return [];
  });
}

/** A notebook's scenarios; their documents are read by the engine's own schema before anything is worked out. */
export function scenariosIn(notebook: Notebook): readonly NotebookScenario[] {
  return notebook.scenarios as unknown as readonly NotebookScenario[];
}

export function scenarioIn(notebook: Notebook, id: string): NotebookScenario | null {
  return scenariosIn(notebook).find((scenario) => scenario.id === id) ?? null;
}
