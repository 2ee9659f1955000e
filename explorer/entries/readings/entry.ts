import { standingOf } from "../../../engine/notebook/standingOf.ts";
import type { EntryKind } from "../../notebook/entryKind.ts";
import { ReadingsEntry, readingsSummary } from "./ReadingsEntry.tsx";

export const readingsEntry: EntryKind<"readings"> = {
  kind: "readings",
  title: "Readings",
  purpose: "what was read off the station, and the forecast that learns from it",
  make: (notebook) => ({ title: "Where do we stand?", doc: { scenario: standingOf(notebook), readings: [] } }),
  summary: readingsSummary,
  View: ReadingsEntry,
};
