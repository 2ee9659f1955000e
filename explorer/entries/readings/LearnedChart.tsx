import { createMemo, For } from "solid-js";
import { chargeAxis, chargeLayout, fromNow, learnedLabels } from "../../../engine/answers/readings/learnedLayout.ts";
import type { LearnedPicture, ReadingMark } from "../../../engine/answers/readings/learnedPicture.ts";
import { learnedInstant } from "../../../engine/answers/readings/learnedWords.ts";
import { bandArea, bandLine } from "../../../engine/drawing/bandPaths.ts";
import { ReserveLine } from "../../charts/ReserveLine.tsx";
import { RulerChart } from "../../charts/RulerChart.tsx";
import type { NotebookPage } from "../../notebook/notebookPage.ts";

/** The forecast from the last reading on, over what was forecast before it, with the readings themselves. */
export function LearnedChart(props: { page: NotebookPage; picture: LearnedPicture; name: string; isStale: boolean }) {
  const isPhone = () => props.page.room().isPhone;
  const layout = createMemo(() => chargeLayout(isPhone() ? 176 : 220));
  const scale = createMemo(() => props.page.scale(props.picture.time));
  const axis = createMemo(() => [
    chargeAxis(
      props.picture.fullAh,
      layout(),
      "rings: what was read, with its error. Dotted: as it was before the readings",
      isPhone(),
    ),
  ]);
  const labels = createMemo(() => learnedLabels(props.picture, layout(), scale()));
  const since = () => fromNow(props.picture);
  const latest = () => props.picture.marks.at(-1);
  const y = (share: number) => layout().y(share);
  const before = () => props.picture.before;
  const after = () => props.picture.after;
  const line = (of: "before" | "after", band: "p5" | "p50" | "p95") =>
    of === "before"
      ? bandLine(props.picture.time, scale(), y, before()[band])
      : bandLine(since(), scale(), y, after()[band]);
  return (
    <RulerChart
      page={props.page}
      time={props.picture.time}
      scale={scale()}
      heightPx={layout().heightPx}
      axis={axis()}
      labels={labels()}
      label={`Charge over time, ${props.name}: as planned, and from the last reading to the end.`}
      words={(ms) => learnedInstant(props.picture, ms)}
      faded={props.isStale}
    >
      <g class="data learned-before">
        <For each={["p5", "p50", "p95"] as const}>{(band) => <path d={line("before", band)} />}</For>
      </g>
      <g class="data series-first">
        <path class="band-wide" d={bandArea(since(), scale(), y, after().p5, after().p95)} />
        <path class="band-close" d={bandArea(since(), scale(), y, after().p25, after().p75)} />
        <path class="band-edge" d={line("after", "p5")} />
        <path class="band-edge" d={line("after", "p95")} />
      </g>
      <ReserveLine
        time={props.picture.time}
        reserveShare={props.picture.report.reserveShare}
        fullAh={props.picture.fullAh}
        y={y}
        scale={scale()}
      />
      <g class="data series-first">
        <path class="median-halo" d={line("after", "p50")} />
        <path class="median" d={line("after", "p50")} />
      </g>
      <g class="data">
        <For each={props.picture.marks}>
          {(mark) => <Mark mark={mark} x={scale().x(mark.ms)} y={y} isLatest={mark === latest()} />}
        </For>
      </g>
    </RulerChart>
  );
}

function Mark(props: { mark: ReadingMark; x: number; y: (share: number) => number; isLatest: boolean }) {
  const whisker = () => `M${props.x} ${props.y(props.mark.lowShare)}V${props.y(props.mark.highShare)}`;
  return (
    <g class="reading-mark" classList={{ "reading-poor": props.mark.isPoor, "reading-latest": props.isLatest }}>
      <path d={whisker()} />
      <circle cx={props.x} cy={props.y(props.mark.share)} r={6} />
    </g>
  );
}
