import { readFileSync } from "node:fs";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { type Trace, trace } from "../../engine/run/trace.ts";
import { applyChanges } from "../../engine/scenario/applyChanges.ts";
import type { Change } from "../../engine/scenario/change.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";

/** The example that the page opens with, as it is written. */
export const EXAMPLE = JSON.parse(readFileSync("scenarios/walnut-grove.json", "utf8")) as ScenarioInput;

/** The changes of one of its variants. */
export function variantChanges(id: string): Change[] {
  return EXAMPLE.variants!.find((variant) => variant.id === id)!.changes as Change[];
}

/** Runs the example with changes, the way any caller of the engine would. */
export async function exampleRun(changes: readonly Change[] = [], document: ScenarioInput = EXAMPLE): Promise<Trace> {
  const changed = applyChanges(document, changes);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  const read = readScenario(changed.document);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const run = trace(read.scenario, { climate: await loadClimateTables() });
  if (!run.ok) throw new Error(run.problems[0]!.message);
  return run.trace;
}
