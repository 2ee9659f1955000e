import { FIRST_KINDS, kindOf } from "../answers/kinds.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";
import type { Entry } from "./notebook.ts";

/**
 * The entries that a new notebook opens on.
 * @param scenarios ids of its scenarios, the plan as it is first; @param base the plan's document
 */
export function firstEntries(
  scenarios: readonly [string, ...string[]],
  base: Pick<ScenarioInput, "obstacles">,
): Entry[] {
  return FIRST_KINDS.flatMap((kind) => {
    const made = kindOf(kind).first?.(scenarios, base) ?? null;
    return made === null ? [] : [{ id: kind, kind, ...made } as Entry];
  });
}
