import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf, secondOf } from "../../notebook/firstOf.ts";
import { VersusView, versusSummary } from "./VersusView.tsx";

export const versusEntry: EntryKind<"versus"> = {
  kind: "versus",
  title: "Versus",
  purpose: "two to four scenarios side by side, held against the first",
  make: (notebook) => ({
    title: "Which of these?",
    doc: { scenarios: [firstOf(notebook), secondOf(notebook)] },
  }),
  summary: versusSummary,
  View: VersusView,
};
