import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { ReachEntry, reachSummary } from "./ReachEntry.tsx";

/** Other scenarios whose panels are taken to be at hand. */
const MOST_LENT = 4;

export const reachEntry: EntryKind<"reach"> = {
  kind: "reach",
  title: "What would it take?",
  purpose: "the least that makes it hold, and what can stay at home",
  make: (notebook) => {
    const scenario = firstOf(notebook);
    const others = notebook.scenarios.map(({ id }) => id).filter((id) => id !== scenario);
    return {
      title: "What would it take?",
      doc: { scenario, targetIn100: 95, most: "money", locked: [], lent: others.slice(0, MOST_LENT) },
    };
  },
  summary: reachSummary,
  View: ReachEntry,
};
