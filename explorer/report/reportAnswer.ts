import { forecastSeries } from "../entries/forecast/forecastSeries.ts";
import { forecastMore, forecastSentence } from "../entries/forecast/forecastWords.ts";
import type { Words } from "../words/answerOf.ts";
import type { ReportPage } from "./reportPage.ts";

/** The sentence that heads a notebook, from its first forecast; null when it has none, or nothing is worked out. */
export function reportAnswer(page: ReportPage): { readonly words: readonly Words[]; readonly more: string } | null {
  const notebook = page.notebook();
  for (const entry of notebook.entries) {
    if (entry.kind !== "forecast") continue;
    const series = forecastSeries(page, entry.doc);
    if (series.length < entry.doc.scenarios.length) return null;
    return { words: forecastSentence(series), more: forecastMore(series, notebook.seed) };
  }
  return null;
}
