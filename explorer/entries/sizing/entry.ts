import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { SizingEntry, sizingSummary } from "./SizingEntry.tsx";

export const sizingEntry: EntryKind<"sizing"> = {
  kind: "sizing",
  title: "Sizing",
  purpose: "how big a bank, how much panel: the odds over two numbers",
  make: (notebook) => ({
    title: "How big a bank?",
    doc: { scenario: firstOf(notebook), targetIn100: 95, autonomyDays: 2 },
  }),
  summary: sizingSummary,
  View: SizingEntry,
};
