import { max, min, range, scaleLinear, tickStep } from "d3";
import type { AxisTitle } from "../../drawing/axisTitle.ts";
import type { EndLabel } from "../../drawing/endLabels.ts";
import type { TimeScale } from "../../drawing/timeScale.ts";
import type { TimePicture } from "../../ruler/timePicture.ts";
import type { Look } from "../../words/look.ts";
import { ampHours, figure } from "../../words/numbers.ts";
import type { PairedBands } from "./versusPicture.ts";

const TOP_PX = 30;
const CHART_PX = 110;

/** Height, scale and axis of the charge that one scenario has put by more than another. */
export function pairedLayout({ p5, p95 }: PairedBands) {
  const least = Math.min(0, min(p5) ?? 0);
  const most = Math.max(0, max(p95) ?? 0, least + 1);
  const step = tickStep(least, most, 3);
  const [low, high] = [Math.floor(least / step), Math.ceil(most / step)];
  const y = scaleLinear([low * step, high * step], [TOP_PX + CHART_PX, TOP_PX]);
  const axis: AxisTitle = {
    title: "Put by, Ah",
    how: "more in the bank than the other, the same sky and people in both; tint: nine in ten",
    titleY: TOP_PX - 10,
    values: range(low, high + 1).map((tick) => ({ y: y(tick * step), text: figure(tick * step) })),
  };
  return { y, axis, heightPx: TOP_PX + CHART_PX + 12 };
}

export type PairedLayout = ReturnType<typeof pairedLayout>;

/** The median at the end, beyond the ruler. */
export function pairedLabels(
  time: TimePicture,
  { p50 }: PairedBands,
  look: Look,
  { y }: PairedLayout,
  scale: TimeScale,
): EndLabel[] {
  const lastAh = p50.at(-1)!;
  return [
    {
      x: scale.x(time.startMs + time.steps * time.stepMs),
      y: y(lastAh),
      labelY: y(lastAh),
      figure: ampHours(lastAh),
      words: "median at the end",
      look,
      dotted: false,
    },
  ];
}
