import { max, min, range, scaleLinear, tickStep } from "d3";
import type { AxisTitle } from "../../drawing/axisTitle.ts";
import { type EndLabel, spread } from "../../drawing/endLabels.ts";
import type { TimeScale } from "../../drawing/timeScale.ts";
import type { TimePicture } from "../../ruler/timePicture.ts";
import type { Look } from "../../words/look.ts";
import { ampHours, figure } from "../../words/numbers.ts";
import type { PlanColumn } from "./planColumns.ts";
import type { PairedBands } from "./versusPicture.ts";

const TOP_PX = 30;
const CHART_PX = 110;

/** What one scenario has put by more than the first. */
export interface PutBy {
  readonly name: string;
  readonly look: Look;
  readonly time: TimePicture;
  readonly paired: PairedBands;
}

/** Those of the columns whose difference to the first can be drawn over time. */
export function putByOf(columns: readonly PlanColumn[]): PutBy[] {
  return columns.flatMap(({ name, look, pair }) =>
    pair === null || pair.paired === null ? [] : [{ name, look, time: pair.time, paired: pair.paired }],
  );
}

/** Height, scale and axis of the charge that scenarios have put by more than the first. */
export function pairedLayout(all: readonly PutBy[]) {
  const least = Math.min(0, min(all, ({ paired }) => min(paired.p5)) ?? 0);
  const most = Math.max(0, max(all, ({ paired }) => max(paired.p95)) ?? 0, least + 1);
  const step = tickStep(least, most, 3);
  const [low, high] = [Math.floor(least / step), Math.ceil(most / step)];
  const y = scaleLinear([low * step, high * step], [TOP_PX + CHART_PX, TOP_PX]);
  const axis: AxisTitle = {
    title: "Put by, Ah",
    how: "more in the bank than the first, the same sky and people; tint: nine in ten",
    titleY: TOP_PX - 10,
    values: range(low, high + 1).map((tick) => ({ y: y(tick * step), text: figure(tick * step) })),
  };
  return { y, axis, top: TOP_PX, bottom: TOP_PX + CHART_PX, heightPx: TOP_PX + CHART_PX + 12 };
}

export type PairedLayout = ReturnType<typeof pairedLayout>;

/** The medians at the end, beyond the ruler. */
export function pairedLabels(all: readonly PutBy[], { y, top, bottom }: PairedLayout, scale: TimeScale): EndLabel[] {
  const labels = all.map(({ name, look, time, paired }) => {
    const lastAh = paired.p50.at(-1)!;
    return {
      x: scale.x(time.startMs + time.steps * time.stepMs),
      y: y(lastAh),
      figure: ampHours(lastAh),
      words: all.length === 1 ? "median at the end" : name.length <= 18 ? name : `${name.slice(0, 17)}…`,
      look,
      dotted: false,
    };
  });
  return spread(labels, top, bottom);
}
