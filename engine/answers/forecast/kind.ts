import { kind } from "../kind.ts";
import { askOdds, ForecastDoc, oddsOf } from "./ask.ts";
import { forecastSeries } from "./forecastSeries.ts";
import { forecastMore, forecastSentence } from "./forecastWords.ts";

/** Will it hold: charge in bands over many skies. Asked for each scenario by itself, so that entries share the answers. */
export const forecastKind = kind({
  doc: ForecastDoc,
  scenarios: ({ scenarios }) => scenarios,
  without: ({ scenarios }, lost) => {
    const rest = scenarios.filter((id) => !lost.has(id));
    return rest.length === 0 ? null : { scenarios: rest };
  },
  asks: ({ scenarios }) => scenarios.map(askOdds),
  isDrawn: true,
  question: {
    pass: "skies",
    choices: () => ({}),
    members: (drawn) => drawn,
    work: () => import("./work.ts").then(({ workOdds }) => workOdds),
  },
  headline: (page, doc) => {
    const series = forecastSeries(page, doc);
    if (series.length < doc.scenarios.length) return { words: null, more: "", stale: true };
    const stale = doc.scenarios.some((id) => oddsOf(page, id).stale);
    return { words: forecastSentence(series), more: forecastMore(series, page.drawn().seed), stale };
  },
  first: ([base, other]) => ({
    title: "Will it hold?",
    doc: { scenarios: other === undefined ? [base] : [other, base] },
  }),
  tell: () => import("./tell.ts").then(({ tellForecast }) => tellForecast),
});
