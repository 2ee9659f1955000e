import { type EndLabel, spread } from "../../drawing/endLabels.ts";
import type { TimeScale } from "../../drawing/timeScale.ts";
import { percent } from "../../words/numbers.ts";
import { inHundred } from "../../words/oddsWords.ts";
import { type ForecastLayout, MOST_BANDS, type Series } from "./forecastLayout.ts";

/** Names and figures beyond the ruler. */
export function forecastLabels(series: readonly Series[], layout: ForecastLayout, scale: TimeScale): EndLabel[] {
  const [first] = series;
  if (first === undefined) return [];
  const x = scale.x(first.picture.startMs + first.picture.steps * first.picture.stepMs);
  const at = (each: Series, band: "p5" | "p50" | "p95", words: string, look: string) => {
    const share = each.picture.charge[band].at(-1)!;
    return { x, y: layout.charge.y(share), figure: percent(share), words, look, dotted: false };
  };
  const charge = series.flatMap((each) => {
    const median = at(each, "p50", clipped(each.name), each.look);
    if (each !== first || series.length > MOST_BANDS) return [median];
    const edge = `${each.look}-edge`;
    return [at(each, "p95", "best 1 in 20", edge), median, at(each, "p5", "worst 1 in 20", edge)];
  });
  const strip = series.map((each, k) => ({
    x: scale.widthPx - 8,
    y: layout.strip.rows[k]! - 6,
    figure: inHundred(each.picture.report.dark),
    words: "in 100 ever go dark",
    look: `${each.look}-edge`,
    dotted: false,
  }));
  return [
    ...spread(charge, layout.charge.top, layout.charge.bottom),
    ...spread(strip, layout.strip.top, layout.strip.rows.at(-1)!),
  ];
}

function clipped(name: string): string {
  return name.length <= 18 ? name : `${name.slice(0, 17)}…`;
}
