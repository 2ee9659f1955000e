import type { EntryKind } from "../../notebook/entryKind.ts";
import { NoteView, noteSummary } from "./NoteView.tsx";

export const noteEntry: EntryKind<"note"> = {
  kind: "note",
  title: "Note",
  purpose: "text with figures quoted from the results",
  make: () => ({ title: "Note", doc: { text: "" } }),
  summary: noteSummary,
  View: NoteView,
};
