import { range } from "d3";
import { csvFormatRows } from "d3-dsv";
import { createSignal, createUniqueId, For, Show } from "solid-js";
import { fileName, saveFile } from "../../download/saveFile.ts";
import { clockAt } from "../../time/localClock.ts";
import { figure } from "../../words/numbers.ts";
import type { Series } from "./forecastLayout.ts";

const SHARES = ["p5", "p25", "p50", "p75", "p95"] as const;
const SHARE_WORDS = ["1 in 20 under", "1 in 4 under", "median", "1 in 4 over", "1 in 20 over"];

interface Row {
  readonly when: string;
  readonly figures: readonly string[];
}

function rowsOf(series: readonly Series[], everyMs: number): Row[] {
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

const heads = (series: readonly Series[]) =>
  series.flatMap(({ name }) => [...SHARE_WORDS.map((words) => `${name}: ${words}, %`), `${name}: dark, in 100`]);

/** The forecast in figures: the same numbers, hour by hour on the page and step by step in the file. */
export function ForecastTable(props: { series: readonly Series[] }) {
  const [isOpen, setOpen] = createSignal(false);
  const id = createUniqueId();
  const save = () => {
    const rows = rowsOf(props.series, 0).map(({ when, figures }) => [when, ...figures]);
    const text = csvFormatRows([["time", ...heads(props.series)], ...rows]);
    saveFile(`${fileName(props.series[0]!.name)}-forecast.csv`, "text/csv", text);
  };
  return (
    <div class="margin-left no-print">
      <p class="acts-row">
        <button
          type="button"
          class="act"
          aria-expanded={isOpen()}
          aria-controls={id}
          onClick={() => setOpen(!isOpen())}
        >
          Bands in figures
        </button>
        <button type="button" class="act" disabled={props.series.length === 0} onClick={save}>
          Bands as CSV
        </button>
      </p>
      <div id={id}>
        <Show when={isOpen()}>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
          <section class="wide tall" tabIndex={0} aria-label="Forecast, hour by hour">
            <table>
              <caption class="unseen">
                Charge in the bank hour by hour, five quantiles, and the odds of being dark
              </caption>
              <thead>
                <tr>
                  <th scope="col">At</th>
                  <For each={heads(props.series)}>{(head) => <th scope="col">{head}</th>}</For>
                </tr>
              </thead>
              <tbody>
                <For each={rowsOf(props.series, 3_600_000)}>
                  {(row) => (
                    <tr>
                      <th scope="row">{row.when}</th>
                      <For each={row.figures}>{(text) => <td>{text}</td>}</For>
                    </tr>
                  )}
                </For>
              </tbody>
            </table>
          </section>
        </Show>
      </div>
    </div>
  );
}
