import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf, secondOf } from "../../notebook/firstOf.ts";
import { VersusEntry, versusSummary } from "./VersusEntry.tsx";

export const versusEntry: EntryKind<"versus"> = {
  kind: "versus",
  title: "Versus",
  purpose: "two to four scenarios side by side, held against the first",
  make: (notebook) => ({
    title: "Which of these?",
    doc: { scenarios: [firstOf(notebook), secondOf(notebook)] },
  }),
  summary: versusSummary,
  View: VersusEntry,
};
