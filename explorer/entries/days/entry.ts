import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { DaysView, daysSummary } from "./DaysView.tsx";

export const daysEntry: EntryKind<"days"> = {
  kind: "days",
  title: "Days",
  purpose: "the days of one run in figures",
  make: (notebook) => ({ title: "The same days in figures", doc: { scenario: firstOf(notebook) } }),
  summary: daysSummary,
  View: DaysView,
};
