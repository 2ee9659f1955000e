import { range } from "d3";
import { clockAt } from "../../ruler/rulerClock.ts";
import { figure } from "../../words/numbers.ts";
import type { Series } from "./forecastLayout.ts";

const SHARES = ["p5", "p25", "p50", "p75", "p95"] as const;
const SHARE_WORDS = ["1 in 20 under", "1 in 4 under", "median", "1 in 4 over", "1 in 20 over"];

/** An instant of a forecast in figures, one for each of `forecastHeads`. */
export interface ForecastRow {
  readonly when: string;
  readonly figures: readonly string[];
}

/** What stands over the columns. */
export const forecastHeads = (series: readonly Series[]): string[] =>
  series.flatMap(({ name }) => [...SHARE_WORDS.map((words) => `${name}: ${words}, %`), `${name}: dark, in 100`]);

/** @param everyMs time from row to row; at least one step */
export function forecastRows(series: readonly Series[], everyMs: number): ForecastRow[] {
  const [first] = series;
  if (first === undefined) return [];
  const { startMs, stepMs, steps, ruler } = first.picture;
  const perRow = Math.max(1, Math.round(everyMs / stepMs));
  return range(0, steps + 1, perRow).map((i) => {
    const { day, clock } = clockAt(ruler, startMs + i * stepMs);
    const figures = series.flatMap(({ picture }) => {
      const step = Math.min(i, picture.steps);
      const dark = picture.report.darkShare[Math.min(i, picture.steps - 1)]!;
      return [...SHARES.map((share) => figure(picture.charge[share][step]! * 100, 1)), figure(dark * 100, 1)];
    });
    return { when: `${day} ${clock}`, figures };
  });
}
