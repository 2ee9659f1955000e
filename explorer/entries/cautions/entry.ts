import type { EntryKind } from "../../notebook/entryKind.ts";
import { CautionsView } from "./CautionsView.tsx";

export const cautionsEntry: EntryKind<"cautions"> = {
  kind: "cautions",
  title: "Cautions",
  purpose: "what is left out, and what can hurt",
  make: () => ({ title: "What this leaves out, and cautions", doc: {} }),
  summary: () => "and what is left out",
  View: CautionsView,
};
