import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { DriversEntry, driversSummary } from "./DriversEntry.tsx";

export const driversEntry: EntryKind<"drivers"> = {
  kind: "drivers",
  title: "Drivers",
  purpose: "what decides it, and what to switch off first",
  make: (notebook) => ({ title: "What decides it?", doc: { scenario: firstOf(notebook) } }),
  summary: driversSummary,
  View: DriversEntry,
};
