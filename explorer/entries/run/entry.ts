import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { RunEntry, runSummary } from "./RunEntry.tsx";

export const runEntry: EntryKind<"run"> = {
  kind: "run",
  title: "One run",
  purpose: "charge, sun, loads and volts, step by step",
  make: (notebook) => ({ title: "One run, step by step", doc: { scenario: firstOf(notebook) } }),
  summary: runSummary,
  View: RunEntry,
};
