import { stepAt } from "../../drawing/bandPaths.ts";
import { html } from "../../drawing/html.ts";
import { RULER_PX } from "../../drawing/rulerPx.ts";
import { timeScale } from "../../drawing/timeScale.ts";
import { percent } from "../../words/numbers.ts";
import type { Tell } from "../kind.ts";
import { foldedTable, missing, picture, saidWords, table } from "../reportParts.ts";
import type { SlideChart } from "../slide.ts";
import { NOT_YET, SLIDE_CHARGE_PX, SLIDE_ROOM } from "../slideParts.ts";
import type { ForecastDoc } from "./ask.ts";
import { oddsOf } from "./ask.ts";
import { forecastDrawing } from "./forecastDrawing.ts";
import { forecastLayout, type Series } from "./forecastLayout.ts";
import { forecastHeads, forecastRows } from "./forecastRows.ts";
import { forecastSeries } from "./forecastSeries.ts";
import { failsWords, forecastMore, forecastSentence } from "./forecastWords.ts";

const ROWS_MS = 3 * 3_600_000;

export const tellForecast: Tell<ForecastDoc> = {
  section: (page, doc) => {
    const series = forecastSeries(page, doc);
    const more = [forecastMore(series, page.drawn().seed), ...series.map(failsWords)].filter(Boolean).join(" ");
    return html`${missing(doc.scenarios.map((id) => oddsOf(page, id)))}${
      series.length > 0 &&
      html`<p class="verdict">${saidWords(forecastSentence(series))}</p><p class="more">${more}</p>${picture(forecastDrawing(series))}${foldedTable(
        "Bands in figures, every three hours",
        table(
          "Charge in the bank, five quantiles, and the odds of being dark",
          ["At", ...forecastHeads(series)],
          forecastRows(series, ROWS_MS).map(({ when, figures }) => ({ name: when, figures })),
        ),
      )}`
    }`;
  },
  drawing: (page, doc) => forecastDrawing(forecastSeries(page, doc)),
  slide: (page, doc) => {
    const series = forecastSeries(page, doc);
    return series.length === 0 ? NOT_YET : { words: forecastSentence(series), chart: forecastChart(series) };
  },
};

function forecastChart(series: readonly Series[]): SlideChart | null {
  const time = series[0]!.picture;
  const drawing = forecastDrawing(series, SLIDE_ROOM, { chargePx: SLIDE_CHARGE_PX, hasSun: false });
  if (drawing === null) return null;
  const { y } = forecastLayout(series, SLIDE_CHARGE_PX).charge;
  return {
    drawing,
    time,
    scale: timeScale(time.ruler, SLIDE_ROOM.daysPx),
    leftPx: SLIDE_ROOM.axisPx,
    marks: (ms) =>
      series.map(({ look, picture: { charge, ...steps } }) => {
        const share = charge.p50[stepAt(steps, ms, charge.p50.length)]!;
        return { y: RULER_PX + y(share), text: percent(share), look };
      }),
  };
}
