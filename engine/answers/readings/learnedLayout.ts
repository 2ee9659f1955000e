import { scaleLinear } from "d3";
import type { AxisTitle } from "../../drawing/axisTitle.ts";
import { type EndLabel, spread } from "../../drawing/endLabels.ts";
import type { TimeScale } from "../../drawing/timeScale.ts";
import type { TimePicture } from "../../ruler/timePicture.ts";
import type { Look } from "../../words/look.ts";
import { ampHours, figure, percent } from "../../words/numbers.ts";
import type { LearnedPicture } from "./learnedPicture.ts";

const TITLE_PX = 30;
const TICKS = [0, 0.2, 0.4, 0.6, 0.8, 1];

/** Heights and scale of the chart of a charge. */
export function chargeLayout(chargePx: number) {
  const bottom = TITLE_PX + chargePx;
  return { top: TITLE_PX, bottom, y: scaleLinear([0, 1], [bottom, TITLE_PX]), heightPx: bottom + 12 };
}
export type ChargeLayout = ReturnType<typeof chargeLayout>;

/** Title and values at the left of it. */
export function chargeAxis(fullAh: number, { y }: ChargeLayout, how: string, isShort: boolean): AxisTitle {
  return {
    title: isShort ? "Charge in the bank" : `Charge in the bank, % of ${ampHours(fullAh)}`,
    how,
    titleY: TITLE_PX - 10,
    values: TICKS.map((tick) => ({ y: y(tick), text: `${figure(tick * 100)}${tick === 1 && !isShort ? " %" : ""}` })),
  };
}

/** The event from the last reading on: what the learned bands are drawn over. */
export function fromNow({ time, report }: LearnedPicture): TimePicture {
  return { ...time, startMs: report.now.ms, steps: time.steps - report.now.step };
}

export function learnedLabels(
  picture: LearnedPicture,
  look: Look,
  { y, top, bottom }: ChargeLayout,
  scale: TimeScale,
): EndLabel[] {
  const { time, before, after } = picture;
  const x = scale.x(time.startMs + time.steps * time.stepMs);
  const at = (share: number, words: string, as: string) => ({
    x,
    y: y(share),
    figure: percent(share),
    words,
    look: as,
    dotted: false,
  });
  const labels = [
    at(after.p95.at(-1)!, "best 1 in 20", `${look}-edge`),
    at(after.p50.at(-1)!, "after the readings", look),
    at(after.p5.at(-1)!, "worst 1 in 20", `${look}-edge`),
    at(before.p50.at(-1)!, "before, dotted", "before"),
  ];
  return spread(labels, top, bottom);
}
