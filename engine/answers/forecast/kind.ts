import { kind } from "../kind.ts";
import { askRun, runOf } from "../run/ask.ts";
import { askOdds, ForecastDoc, oddsOf } from "./ask.ts";
import { forecastSeries } from "./forecastSeries.ts";
import { forecastMore } from "./forecastWords.ts";
import { forecastHeadline } from "./headline.ts";

/** Will it hold: charge in bands over many skies. Asked for each scenario by itself, so that entries share the answers. */
export const forecastKind = kind({
  doc: ForecastDoc,
  scenarios: ({ scenarios }) => scenarios,
  without: ({ scenarios }, lost) => {
    const rest = scenarios.filter((id) => !lost.has(id));
    return rest.length === 0 ? null : { scenarios: rest };
  },
  // A single run of each says why it fails, where it does.
  asks: ({ scenarios }) => [...scenarios.map(askOdds), ...scenarios.map(askRun)],
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
    const plan = doc.scenarios.find((id) => page.baseDocument(id) === null) ?? doc.scenarios[0]!;
    const [run, document] = [runOf(page, plan).result, page.document(plan)];
    const facts = run === null || document === null ? null : { ledger: run.ledger, document };
    return { words: forecastHeadline(series, plan, facts), more: forecastMore(series, page.drawn().seed), stale };
  },
  first: ([base, other]) => ({
    title: "Will it hold?",
    doc: { scenarios: other === undefined ? [base] : [other, base] },
  }),
  tell: () => import("./tell.ts").then(({ tellForecast }) => tellForecast),
});
