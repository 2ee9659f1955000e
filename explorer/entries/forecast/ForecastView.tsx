import { createMemo, createUniqueId, For, Index, Show } from "solid-js";
import { oddsOf } from "../../../engine/answers/forecast/ask.ts";
import { darkTicks } from "../../../engine/answers/forecast/darkTicks.ts";
import { forecastAxis } from "../../../engine/answers/forecast/forecastAxis.ts";
import { forecastLabels } from "../../../engine/answers/forecast/forecastLabels.ts";
import {
  type ForecastLayout,
  forecastLayout,
  isMany,
  isSameLayout,
  type Series,
} from "../../../engine/answers/forecast/forecastLayout.ts";
import { forecastSeries } from "../../../engine/answers/forecast/forecastSeries.ts";
import {
  failsWords,
  forecastInstant,
  forecastMore,
  forecastSentence,
} from "../../../engine/answers/forecast/forecastWords.ts";
import { bandArea, bandLine } from "../../../engine/drawing/bandPaths.ts";
import { isSameScale, type TimeScale } from "../../../engine/drawing/timeScale.ts";
import { THIN } from "../../../engine/words/numbers.ts";
import { inHundred } from "../../../engine/words/oddsWords.ts";
import { ReserveLine } from "../../charts/ReserveLine.tsx";
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
  const found = () => props.doc.scenarios.map((id) => oddsOf(props.page, id));
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
      <Show when={series()[0]}>
        {(first) => <ForecastChart page={props.page} series={series()} time={first().picture} isStale={isStale()} />}
      </Show>
      <ForecastTable series={series()} />
    </>
  );
}

const OTHERS = ["second", "third", "fourth"];

/** The same objects for what did not change, so that only what did is drawn again. */
function kept(series: readonly Series[], before: readonly Series[]): readonly Series[] {
  return series.map((each, k) => {
    const old = before[k];
    return old?.id === each.id && old.name === each.name && old.picture === each.picture ? old : each;
  });
}

function ForecastChart(props: {
  page: EntryProps<"forecast">["page"];
  series: readonly Series[];
  time: Series["picture"];
  isStale: boolean;
}) {
  const id = createUniqueId();
  const isPhone = () => props.page.room().isPhone;
  // Of the same measures, the old ones: paths hang from them, and are costly to draw.
  const layout = createMemo(() => forecastLayout(props.series, isPhone() ? 176 : 220), undefined, {
    equals: isSameLayout,
  });
  const scale = createMemo(() => props.page.scale(props.time), undefined, { equals: isSameScale });
  const axis = createMemo(() => forecastAxis(props.time, layout(), isPhone(), props.series));
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
      <Index each={props.series}>
        {(each, k) => (
          <SeriesBands
            series={each()}
            row={k}
            isMany={isMany(props.series)}
            layout={layout()}
            scale={scale()}
            id={id}
          />
        )}
      </Index>
      <ReserveLine
        time={props.time}
        reserveShare={props.time.reserveShare}
        fullAh={props.time.fullAh}
        y={layout().charge.y}
        scale={scale()}
      />
      <Index each={props.series}>
        {(each) => {
          const path = createMemo(() =>
            bandLine(each().picture, scale(), layout().charge.y, each().picture.charge.p50),
          );
          return (
            <g class={`series-${each().look}`}>
              <path class="median-halo" d={path()} />
              <path class="median" d={path()} />
            </g>
          );
        }}
      </Index>
    </RulerChart>
  );
}

/** One scenario's bands; where they are many, only the first is tinted, and of the others there are edges and medians. */
function SeriesBands(props: {
  series: Series;
  row: number;
  isMany: boolean;
  layout: ForecastLayout;
  scale: TimeScale;
  id: string;
}) {
  const time = createMemo(() => props.series.picture);
  const isFirst = () => props.series.look === "first";
  const fill = (band: "wide" | "close") => (isFirst() ? undefined : `url(#${props.id}-${band})`);
  const row = () => props.layout.strip.rows[props.row] ?? 0;
  const y = () => props.layout.charge.y;
  const bands = () => time().charge;
  return (
    <g class={`data series-${props.series.look}`} classList={{ "series-many": props.isMany }}>
      <Show when={isFirst() || !props.isMany}>
        <path class="band-wide" fill={fill("wide")} d={bandArea(time(), props.scale, y(), bands().p5, bands().p95)} />
      </Show>
      <Show when={!props.isMany}>
        <path
          class="band-close"
          fill={fill("close")}
          d={bandArea(time(), props.scale, y(), bands().p25, bands().p75)}
        />
      </Show>
      <path class="band-edge" d={bandLine(time(), props.scale, y(), bands().p5)} />
      <path class="band-edge" d={bandLine(time(), props.scale, y(), bands().p95)} />
      <line class="axis-base" x1={0} x2={props.scale.widthPx} y1={row() + 0.5} y2={row() + 0.5} />
      <path class="dark-tick" d={darkTicks(time(), props.scale, row(), props.layout.strip)} />
      <Show when={isFirst()}>
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
