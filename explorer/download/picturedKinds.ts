import type { EntryKindName } from "../notebook/notebook.ts";

/** Kinds of entries that `entryPicture` draws. */
export const PICTURED_KINDS: ReadonlySet<EntryKindName> = new Set([
  "forecast",
  "versus",
  "run",
  "ledger",
  "shade",
  "sizing",
  "drivers",
  "readings",
  "actual",
]);
