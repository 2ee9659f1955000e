import { prepareEnsemble } from "../engine/ensemble/prepareEnsemble.ts";
import { runMembers } from "../engine/odds/odds.ts";
import { loadClimateTables } from "../engine/place/loadClimateTables.ts";
import { bitScenarios } from "./bitScenarios.ts";
import { type Bits, bitsOf } from "./bitsOf.ts";

/** Fingerprints of everything that a scenario is prepared into, and of everything counted over its members. */
export interface ScenarioBits {
  readonly name: string;
  readonly prepared: Bits;
  readonly counted: Bits;
}

/** Prepares and runs every scenario of `bitScenarios`. Runs wherever it is bundled for: Node, a page, a worker. */
export async function bitsReport(seed: string, members: number): Promise<ScenarioBits[]> {
  return bitScenarios(await loadClimateTables()).map(({ name, scenario, surroundings }) => {
    const ready = prepareEnsemble(scenario, surroundings, seed);
    if (!ready.ok) throw new Error(`${name}: ${ready.problems[0]!.message}`);
    const { prepared, surroundings: _given, ...chance } = ready.ensemble;
    return {
      name,
      prepared: { ...bitsOf(prepared, "prepared"), ...bitsOf(chance, "chance") },
      counted: bitsOf(runMembers(ready.ensemble, 0, members)),
    };
  });
}
