import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { ActualEntry, actualSummary } from "./ActualEntry.tsx";

export const actualEntry: EntryKind<"actual"> = {
  kind: "actual",
  title: "Plan against actual",
  purpose: "a meter's log over the plan: what it missed, and which figures to correct",
  make: (notebook) => ({ title: "How good was the plan?", doc: { scenario: firstOf(notebook) } }),
  summary: actualSummary,
  View: ActualEntry,
};
