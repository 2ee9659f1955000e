import { type Caution, cautionsFor } from "../../checks/cautions.ts";
import { readScenario } from "../../scenario/readScenario.ts";
import type { ScenarioInput } from "../../scenario/scenario.ts";

/** The cautions that matter for some scenarios: each text once, with every reason that it is there for, in the first scenario's order. */
export function cautionsOf(documents: readonly ScenarioInput[]): Caution[] {
  const found = new Map<string, Caution>();
  for (const document of documents) {
    const read = readScenario(document);
    if (!read.ok) continue;
    for (const caution of cautionsFor(read.scenario)) {
      const known = found.get(caution.words);
      if (known === undefined) found.set(caution.words, caution);
      else if (caution.why !== null && !(known.why ?? "").split("; ").includes(caution.why)) {
        const why = known.why === null ? caution.why : `${known.why}; ${caution.why}`;
        found.set(caution.words, { ...known, why });
      }
    }
  }
  return [...found.values()];
}
