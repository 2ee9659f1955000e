import type { EntryKind } from "../../notebook/entryKind.ts";
import { firstOf } from "../../notebook/firstOf.ts";
import { ForecastView, forecastSummary } from "./ForecastView.tsx";

export const forecastEntry: EntryKind<"forecast"> = {
  kind: "forecast",
  title: "Forecast",
  purpose: "will it hold: charge in bands over many skies",
  make: (notebook) => ({ title: "Will it hold?", doc: { scenarios: [firstOf(notebook)] } }),
  summary: forecastSummary,
  View: ForecastView,
};
