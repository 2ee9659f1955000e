import { kindOf } from "../answers/kinds.ts";
import type { Notebook } from "./notebook.ts";

/**
 * The scenario that a notebook's headline speaks of, and so the one that probably stands in the field: of the first entry that can head a notebook the
 * one with a document of its own, else its first; the notebook's first where no entry heads it.
 */
export function standingOf({ entries, scenarios }: Notebook): string {
  for (const { kind, doc } of entries) {
    const { headline, scenarios: shown } = kindOf(kind);
    if (headline === undefined) continue;
    const ids = shown(doc);
    const own = ids.find((id) => scenarios.some((each) => each.id === id && "document" in each));
    return own ?? ids[0] ?? scenarios[0]!.id;
  }
  return scenarios[0]!.id;
}
