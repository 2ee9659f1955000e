import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { LimitsEntry, limitsSummary } from "./LimitsEntry.tsx";

export const limitsEntry: EntryKind<"limits"> = {
  kind: "limits",
  title: "Wiring and limits",
  purpose: "fuses, wires, panel volts, volts at the radios: what is over and what to change",
  make: (notebook) => ({ title: "Wiring and limits", doc: { scenario: firstOf(notebook) } }),
  summary: limitsSummary,
  View: LimitsEntry,
};
