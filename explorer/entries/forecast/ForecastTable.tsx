import { createSignal, createUniqueId, For, Show } from "solid-js";
import type { Series } from "../../../engine/answers/forecast/forecastLayout.ts";
import { forecastHeads, forecastRows } from "../../../engine/answers/forecast/forecastRows.ts";
import { fileName, saveFile } from "../../download/saveFile.ts";

/** The forecast in figures: the same numbers, hour by hour on the page and step by step in the file. */
export function ForecastTable(props: { series: readonly Series[] }) {
  const [isOpen, setOpen] = createSignal(false);
  const id = createUniqueId();
  const save = async () => {
    const { csvText } = await import("../../../engine/csvText.ts");
    const rows = forecastRows(props.series, 0).map(({ when, figures }) => [when, ...figures]);
    const text = csvText([["time", ...forecastHeads(props.series)], ...rows]);
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
                  <For each={forecastHeads(props.series)}>{(head) => <th scope="col">{head}</th>}</For>
                </tr>
              </thead>
              <tbody>
                <For each={forecastRows(props.series, 3_600_000)}>
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
