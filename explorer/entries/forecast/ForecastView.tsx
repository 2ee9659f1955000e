import { createMemo, createUniqueId, For, Show } from "solid-js";
import { bandArea, bandLine } from "../../charts/bandPaths.ts";
import { ReserveLine } from "../../charts/ReserveLine.tsx";
import { RulerChart } from "../../charts/RulerChart.tsx";
import type { TimeScale } from "../../charts/timeScale.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { Problems, Progress } from "../../page/EntryState.tsx";
import { SaidWords } from "../../page/SaidWords.tsx";
import { ScenarioChoice } from "../../page/ScenarioChoice.tsx";
import { THIN } from "../../words/numbers.ts";
import { inHundred } from "../../words/oddsWords.ts";
import { ForecastTable } from "./ForecastTable.tsx";
import { forecastAxis } from "./forecastAxis.ts";
import { forecastLabels } from "./forecastLabels.ts";
import { darkHours, type ForecastLayout, forecastLayout, type Series } from "./forecastLayout.ts";
import { forecastSeries } from "./forecastSeries.ts";
import { failsWords, forecastInstant, forecastMore, forecastSentence } from "./forecastWords.ts";

/** What is known of each of a forecast's scenarios. */
export function seriesOf(props: EntryProps<"forecast">): Series[] {
  return forecastSeries(props.page, props.doc);
}

/** Charge over time in nested bands, hours that may be dark, and the sun: one scenario, or two over one another. */
export function ForecastView(props: EntryProps<"forecast">) {
  const series = createMemo(() => seriesOf(props));
  const found = () => props.doc.scenarios.map((id) => props.page.odds(id));
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
        <div classList={{ "entry-stale": isStale() }}>
          <p class="verdict data">
            <SaidWords words={forecastSentence(series())} />
          </p>
          <p class="more data">
            {[forecastMore(series(), props.page.notebook().seed), ...series().map(failsWords)]
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
          <ScenarioChoice
            page={props.page}
            label="Second scenario"
            value={props.doc.scenarios[1] ?? null}
            none="no second"
            onPick={(id) => setScenario(1, id)}
          />
        </p>
        <Progress of={found()} />
        <Problems of={found()} />
      </div>
      <Show when={series()[0]}>
        {(first) => <ForecastChart page={props.page} series={series()} time={first().picture} isStale={isStale()} />}
      </Show>
      <ForecastTable series={series()} />
    </>
  );
}

function ForecastChart(props: {
  page: EntryProps<"forecast">["page"];
  series: readonly Series[];
  time: Series["picture"];
  isStale: boolean;
}) {
  const id = createUniqueId();
  const isPhone = () => props.page.room().isPhone;
  const layout = createMemo(() => forecastLayout(props.series, isPhone() ? 176 : 220));
  const scale = createMemo(() => props.page.scale(props.time));
  const axis = createMemo(() => forecastAxis(props.time, layout(), isPhone()));
  const labels = createMemo(() => forecastLabels(props.series, layout(), scale()));
  const label = () =>
    `Charge over time. ${forecastSentence(props.series)
      .map(({ text }) => text)
      .join("")}`;
  return (
    <RulerChart
      page={props.page}
      time={props.time}
      scale={scale()}
      heightPx={layout().heightPx}
      axis={axis()}
      labels={labels()}
      label={label()}
      words={(ms) => forecastInstant(props.series, ms)}
      faded={props.isStale}
    >
      <defs>
        <pattern id={`${id}-wide`} width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path class="other-stroke" d="M0 4.5H9" />
        </pattern>
        <pattern
          id={`${id}-close`}
          width="4.5"
          height="4.5"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path class="other-stroke" d="M0 2.2H4.5" />
        </pattern>
      </defs>
      <For each={props.series}>{(each) => <SeriesBands series={each} layout={layout()} scale={scale()} id={id} />}</For>
      <ReserveLine
        time={props.time}
        reserveShare={props.time.reserveShare}
        fullAh={props.time.fullAh}
        y={layout().charge.y}
        scale={scale()}
      />
      <For each={props.series}>
        {(each) => (
          <g class={`series-${each.look}`}>
            <path class="median-halo" d={bandLine(each.picture, scale(), layout().charge.y, each.picture.charge.p50)} />
            <path class="median" d={bandLine(each.picture, scale(), layout().charge.y, each.picture.charge.p50)} />
          </g>
        )}
      </For>
    </RulerChart>
  );
}

function SeriesBands(props: { series: Series; layout: ForecastLayout; scale: TimeScale; id: string }) {
  const time = () => props.series.picture;
  const fill = (band: "wide" | "close") => (props.series.look === "second" ? `url(#${props.id}-${band})` : undefined);
  const row = () => props.layout.strip.rows[props.series.look === "first" ? 0 : 1] ?? 0;
  const y = () => props.layout.charge.y;
  const bands = () => time().charge;
  return (
    <g class={`data series-${props.series.look}`}>
      <path class="band-wide" fill={fill("wide")} d={bandArea(time(), props.scale, y(), bands().p5, bands().p95)} />
      <path class="band-close" fill={fill("close")} d={bandArea(time(), props.scale, y(), bands().p25, bands().p75)} />
      <path class="band-edge" d={bandLine(time(), props.scale, y(), bands().p5)} />
      <path class="band-edge" d={bandLine(time(), props.scale, y(), bands().p95)} />
      <line class="axis-base" x1={0} x2={props.scale.widthPx} y1={row() + 0.5} y2={row() + 0.5} />
      <For each={darkHours(time()).filter(({ share }) => share > 0)}>
        {({ ms, share }) => (
          <rect
            class="dark-tick"
            x={props.scale.x(ms + 1_800_000) - 1.5}
            width={3}
            y={row() - Math.max(1.5, (share / props.layout.strip.fullShare) * props.layout.strip.rowPx)}
            height={Math.max(1.5, (share / props.layout.strip.fullShare) * props.layout.strip.rowPx)}
          />
        )}
      </For>
      <Show when={props.series.look === "first"}>
        <path
          class="sun-band"
          d={bandArea(time(), props.scale, props.layout.sun.y, time().solarW.p25, time().solarW.p75)}
        />
      </Show>
      <path class="sun-line" d={bandLine(time(), props.scale, props.layout.sun.y, time().solarW.p50)} />
    </g>
  );
}

/** "93 of 100 hold" for the index. */
export function forecastSummary(props: EntryProps<"forecast">): string {
  const series = seriesOf(props);
  if (series.length === 0) return "working";
  return `${series.map(({ picture }) => inHundred(picture.report.holds)).join(" and ")}${THIN}of 100 hold`;
}
