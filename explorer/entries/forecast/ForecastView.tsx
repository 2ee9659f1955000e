import { createMemo, For, Show } from "solid-js";
import { oddsOf } from "../../../engine/answers/forecast/ask.ts";
import { forecastDrawing } from "../../../engine/answers/forecast/forecastDrawing.ts";
import type { Series } from "../../../engine/answers/forecast/forecastLayout.ts";
import { forecastSeries } from "../../../engine/answers/forecast/forecastSeries.ts";
import {
  failsWords,
  forecastInstant,
  forecastMore,
  forecastSentence,
} from "../../../engine/answers/forecast/forecastWords.ts";
import { THIN } from "../../../engine/words/numbers.ts";
import { inHundred } from "../../../engine/words/oddsWords.ts";
import { RulerChart } from "../../charts/RulerChart.tsx";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { Problems, Progress } from "../../parts/EntryState.tsx";
import { fadesWhile } from "../../parts/fadesWhile.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";
import { ForecastTable } from "./ForecastTable.tsx";

/** What is known of each of a forecast's scenarios. */
export function seriesOf(props: EntryProps<"forecast">): Series[] {
  return forecastSeries(props.page, props.doc);
}

/** Charge over time in nested bands, hours that may be dark, and the sun: one scenario, or up to four over one another. */
export function ForecastView(props: EntryProps<"forecast">) {
  const series = createMemo((before: readonly Series[]) => kept(seriesOf(props), before), []);
  const drawing = createMemo(() => {
    const room = props.page.room();
    return forecastDrawing(series(), room, { chargePx: room.isPhone ? 176 : 220, hasSun: true });
  });
  const found = () => props.doc.scenarios.map((id) => oddsOf(props.page, id));
  /** What holds means, and how sure that is, stands under the headline already where this entry makes it. */
  const isHead = () => props.page.notebook().entries.find(({ kind }) => kind === "forecast")?.id === props.id;
  const isStale = () => found().some(({ stale }) => stale);
  const setScenario = (k: number, id: string | null) => {
    const scenarios = [...props.doc.scenarios];
    if (id === null) scenarios.splice(k, 1);
    else scenarios[k] = id;
    props.edit({ scenarios }, "scenarios");
  };
  return (
    <>
      <div class="margin-left">
        <div ref={fadesWhile(() => isStale())}>
          <p class="verdict data">
            <SaidWords words={forecastSentence(series())} />
          </p>
          <p class="more data">
            {[isHead() ? "" : forecastMore(series(), props.page.notebook().seed), ...series().map(failsWords)]
              .filter(Boolean)
              .join(" ")}
          </p>
        </div>
        <p class="choices">
          <ScenarioChoice
            page={props.page}
            label="First scenario"
            value={props.doc.scenarios[0]!}
            onPick={(id) => setScenario(0, id)}
          />
          <For each={OTHERS.slice(0, props.doc.scenarios.length)}>
            {(which, k) => (
              <ScenarioChoice
                page={props.page}
                label={`${which.charAt(0).toUpperCase()}${which.slice(1)} scenario`}
                value={props.doc.scenarios[k() + 1] ?? null}
                none={`no ${which}`}
                onPick={(id) => setScenario(k() + 1, id)}
              />
            )}
          </For>
        </p>
        <Progress of={found()} />
        <Problems of={found()} />
      </div>
      <Show when={drawing()}>
        {(drawn) => (
          <RulerChart
            page={props.page}
            drawing={drawn()}
            words={(ms) => forecastInstant(series(), ms)}
            faded={isStale()}
            onWhy={(ms) => props.page.askWhy({ entry: props.id, scenario: props.doc.scenarios[0]!, ms })}
          />
        )}
      </Show>
      <ForecastTable series={series()} />
    </>
  );
}

const OTHERS = ["second", "third", "fourth"];

/** The same list as long as all in it is the same, so that nothing is drawn again. */
function kept(series: readonly Series[], before: readonly Series[]): readonly Series[] {
  const isSame = (each: Series, old: Series | undefined) =>
    old?.id === each.id && old.name === each.name && old.picture === each.picture;
  return series.length === before.length && series.every((each, k) => isSame(each, before[k])) ? before : series;
}

/** "93 of 100 hold" for the index. */
export function forecastSummary(props: EntryProps<"forecast">): string {
  const series = seriesOf(props);
  if (series.length === 0) return "working";
  return `${series.map(({ picture }) => inHundred(picture.report.holds)).join(" and ")}${THIN}of 100 hold`;
}
