import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { ShadeEntry, shadeSummary } from "./ShadeEntry.tsx";

export const shadeEntry: EntryKind<"shade"> = {
  kind: "shade",
  title: "Shade",
  purpose: "who gets the sun: site and sky",
  make: (notebook) => ({ title: "Who gets the sun?", doc: { scenario: firstOf(notebook) } }),
  summary: shadeSummary,
  View: ShadeEntry,
};
