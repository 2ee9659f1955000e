import { readFileSync } from "node:fs";
import { type PreparedEnsemble, prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";

const climate = await loadClimateTables();

/** An example scenario as written, for changes to be worked into. */
export function exampleDocument(name: string): { variants: { id: string; changes: Change[] }[] } {
  return JSON.parse(readFileSync(new URL(`../../../scenarios/${name}.json`, import.meta.url), "utf8"));
}

/** An example with changes, ready for an ensemble. @throws Error with the problems if it is not right */
export function exampleEnsemble(name: string, changes: readonly Change[] = [], seed = "tests"): PreparedEnsemble {
  const changed = applyChanges(exampleDocument(name), changes);
  if (!changed.ok) throw new Error(JSON.stringify(changed.problems));
  const read = readScenario(changed.document);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const ready = prepareEnsemble(read.scenario, { climate }, seed);
  if (!ready.ok) throw new Error(JSON.stringify(ready.problems));
  return ready.ensemble;
}

/** The changes of one of an example's variants. */
export function variantChanges(name: string, id: string): readonly Change[] {
  return exampleDocument(name).variants.find((variant) => variant.id === id)!.changes;
}
