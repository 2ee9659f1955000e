import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { ScenarioView, scenarioSummary } from "./ScenarioView.tsx";

export const scenarioEntry: EntryKind<"scenario"> = {
  kind: "scenario",
  title: "Scenario",
  purpose: "what is planned, and every field of it",
  make: (notebook) => ({ title: "The plan", doc: { scenario: firstOf(notebook) } }),
  summary: scenarioSummary,
  View: ScenarioView,
};
