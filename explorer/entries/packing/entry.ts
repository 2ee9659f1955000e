import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { PackingEntry, packingSummary } from "./PackingEntry.tsx";

/** Other scenarios whose places for panels count too. */
const MOST_LENT = 4;

export const packingEntry: EntryKind<"packing"> = {
  kind: "packing",
  title: "Packing",
  purpose: "what to take along of what the club has, and a list to tick",
  make: (notebook) => {
    const scenario = firstOf(notebook);
    const others = notebook.scenarios.map(({ id }) => id).filter((id) => id !== scenario);
    const known = notebook.entries.find((entry) => entry.kind === packingEntry.kind);
    const owned = known?.kind === packingEntry.kind ? known.doc.owned : undefined;
    return {
      title: "What to pack",
      doc: {
        scenario,
        targetIn100: 90,
        most: "mass",
        lent: others.slice(0, MOST_LENT),
        ...(owned === undefined ? {} : { owned }),
      },
    };
  },
  summary: packingSummary,
  View: PackingEntry,
};
