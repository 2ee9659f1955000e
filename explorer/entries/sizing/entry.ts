import { SizingDoc } from "../../../engine/answers/sizing/doc.ts";
import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { SizingEntry, sizingSummary } from "./SizingEntry.tsx";

export const sizingEntry: EntryKind<"sizing"> = {
  kind: "sizing",
  title: "Sizing",
  purpose: "how big a bank, how much panel: the odds over two numbers",
  make: (notebook) => ({
    title: "How big a bank?",
    doc: SizingDoc.parse({ scenario: firstOf(notebook) }),
  }),
  summary: sizingSummary,
  View: SizingEntry,
};
