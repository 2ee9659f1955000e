import { FIRST_KINDS, kindOf } from "../answers/kinds.ts";
import type { Entry } from "./notebook.ts";

/**
 * The entries that a new notebook opens on.
 * @param scenarios ids of its scenarios, the plan as it is first
 */
export function firstEntries(scenarios: readonly [string, ...string[]]): Entry[] {
  return FIRST_KINDS.flatMap((kind) => {
    const made = kindOf(kind).first?.(scenarios) ?? null;
    return made === null ? [] : [{ id: kind, kind, ...made } as Entry];
  });
}
