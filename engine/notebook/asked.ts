import type { Asked } from "../answers/asked.ts";
import { askRuler, kindOf } from "../answers/kinds.ts";
import type { Entry, Notebook } from "./notebook.ts";

/** What one entry needs to have worked out. */
export const askedBy = ({ kind, doc }: Entry): readonly Asked[] => kindOf(kind).asks(doc);

/** Scenarios that an entry shows. */
export const scenariosOf = ({ kind, doc }: Entry): readonly string[] => kindOf(kind).scenarios(doc);

/** What the whole notebook needs, each thing once; the run that the ruler is taken from comes first. */
export function askedByAll(notebook: Notebook): Asked[] {
  const all: Asked[] = [askRuler(leadOf(notebook)), ...notebook.entries.flatMap(askedBy)];
  const seen = new Set<string>();
  return all.filter((asked) => {
    const key = JSON.stringify(asked);
    return !seen.has(key) && seen.add(key);
  });
}

/** The scenario that gives the sheet its ruler: the first that any entry shows. */
export function leadOf(notebook: Notebook): string {
  for (const entry of notebook.entries) {
    const [first] = scenariosOf(entry);
    if (first !== undefined) return first;
  }
  return notebook.scenarios[0]!.id;
}
