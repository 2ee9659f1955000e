import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf, secondOf } from "../../notebook/firstOf.ts";
import { VersusView, versusSummary } from "./VersusView.tsx";

export const versusEntry: EntryKind<"versus"> = {
  kind: "versus",
  title: "Versus",
  purpose: "two scenarios held against one another",
  make: (notebook) => ({
    title: "Is it worth it?",
    doc: { first: firstOf(notebook), second: secondOf(notebook) },
  }),
  summary: versusSummary,
  View: VersusView,
};
