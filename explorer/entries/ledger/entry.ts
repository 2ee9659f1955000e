import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { LedgerView, ledgerSummary } from "./LedgerView.tsx";

export const ledgerEntry: EntryKind<"ledger"> = {
  kind: "ledger",
  title: "Ledger",
  purpose: "where the energy went",
  make: (notebook) => ({ title: "Where the energy went", doc: { scenario: firstOf(notebook) } }),
  summary: ledgerSummary,
  View: LedgerView,
};
