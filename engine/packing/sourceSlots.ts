import type { Scenario, ScenarioInput } from "../scenario/scenario.ts";
import { knownParts } from "./knownParts.ts";
import type { LeftOut } from "./leftOut.ts";
import type { OwnedThing } from "./ownedThing.ts";
import { newGenerator, type SourceOption, sourceOptions, sourcePatternOf } from "./packedSources.ts";

/** Generators of one kind, none to all of them; `inPlan` is the source of the plan that they stand for. */
export interface SourceChoice {
  readonly thing: number;
  readonly options: readonly SourceOption[];
  readonly inPlan: string | null;
}

/** Every kind of generators of a list. @param leftOut told what cannot be brought here */
export function sourceSlots(
  document: ScenarioInput,
  scenario: Scenario,
  others: readonly ScenarioInput[],
  things: readonly OwnedThing[],
  leftOut: LeftOut[],
): SourceChoice[] {
  const written = knownParts(document, others, "sources");
  const named = new Set(things.flatMap(({ kind, as }) => (kind === "generator" && as !== undefined ? [as] : [])));
  const used = new Set<string>();
  const ids = new Set([...scenario.panels, ...scenario.sources].map(({ id }) => id));
  return things.flatMap((thing, t): SourceChoice[] => {
    if (thing.kind !== "generator" || thing.count === 0) return [];
    let pattern = sourcePatternOf(thing, written, (id) => !used.has(id) && (thing.as === id || !named.has(id)));
    if (pattern === null && thing.as !== undefined) {
      leftOut.push({ thing: t, why: `no plan here has a generator called ${thing.as} that nothing else stands for` });
      return [];
    }
    if (pattern === null) {
      let id = thing.id;
      for (let n = 2; ids.has(id); n++) id = `${thing.id}-${n}`.slice(-40);
      pattern = newGenerator(thing, id, scenario);
    }
    used.add(pattern.id);
    const options = sourceOptions(thing, pattern, ids);
    const inPlan = scenario.sources.some(({ id }) => id === pattern.id) ? pattern.id : null;
    if (options.length === 1) {
      leftOut.push({ thing: t, why: "what it says does not go together with the plan's generator" });
      return [];
    }
    return [{ thing: t, options, inPlan }];
  });
}
