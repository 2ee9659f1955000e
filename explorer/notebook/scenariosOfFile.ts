import type { Notebook, NotebookScenario } from "../../engine/notebook/notebook.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import type { Change } from "../../engine/scenario/change.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * What a scenario file brings: its scenario, and one based on that for each of its variants.
 * @param id what the scenario is to be called by
 * @param taken scenarios whose ids are not free
 */
export function scenariosOfFile(
  source: ScenarioInput,
  base: { readonly id: string; readonly name: string },
  taken: Notebook["scenarios"],
): NotebookScenario[] {
  const { variants = [], ...document } = source as ScenarioInput & { $schema?: string };
  delete document.$schema;
  const made: NotebookScenario[] = [{ ...base, document: document as ScenarioInput }];
  for (const variant of variants) {
    made.push({
      id: freeId(variant.id, [...taken, ...made]),
      name: capital(variant.name).slice(0, 120),
      basedOn: base.id,
      changes: variant.changes as Change[],
    });
  }
  return made;
}
