import { line, max, range, scaleLinear, tickStep } from "d3";
import type { AxisTitle } from "../../drawing/axisTitle.ts";
import { type EndLabel, spread } from "../../drawing/endLabels.ts";
import type { TimeScale } from "../../drawing/timeScale.ts";
import type { TimePicture } from "../../ruler/timePicture.ts";
import type { Look } from "../../words/look.ts";
import { energy, figure, percent } from "../../words/numbers.ts";
import { chargeAxis, chargeLayout } from "../readings/learnedLayout.ts";
import type { ActualPicture } from "./actualPicture.ts";

const TITLE_PX = 30;
const GAP_PX = 22;
const POWER_PX = 84;

/** Heights and scales of the overlay: charge, load, sun. */
export function actualLayout({ plan, actual }: ActualPicture, chargePx: number) {
  const charge = chargeLayout(chargePx);
  const power = (top: number, rows: readonly (Float64Array | null)[]) => {
    const mostW = max(rows, (row) => (row === null ? 0 : max(row))) ?? 0;
    const stepW = tickStep(0, Math.max(10, mostW), 2);
    const topW = Math.max(1, Math.ceil(mostW / stepW)) * stepW;
    return {
      titleY: top + TITLE_PX - 10,
      top: top + TITLE_PX,
      bottom: top + TITLE_PX + POWER_PX,
      y: scaleLinear([0, topW], [top + TITLE_PX + POWER_PX, top + TITLE_PX]),
      ticks: range(0, topW + stepW / 2, stepW),
    };
  };
  const load = power(charge.bottom + GAP_PX, [plan.loadW, actual.loadW]);
  const sun = power(load.bottom + GAP_PX, [plan.sunW, actual.sunW]);
  return { charge, load, sun, heightPx: sun.bottom + 12 };
}
export type ActualLayout = ReturnType<typeof actualLayout>;

export function actualAxis(picture: ActualPicture, layout: ActualLayout, isShort: boolean): AxisTitle[] {
  const how = "solid: planned, in the band of all skies. Dashed: metered";
  const power = (title: string, { titleY, ticks, y }: ActualLayout["load"]) => ({
    title,
    how: "solid: planned. Dashed: metered",
    titleY,
    values: ticks.map((tick, i) => ({
      y: y(tick),
      text: `${figure(tick)}${i === ticks.length - 1 && !isShort ? " W" : ""}`,
    })),
  });
  return [
    chargeAxis(picture.fullAh, layout.charge, how, isShort),
    power("Load, W", layout.load),
    power("From the sun, as taken, W", layout.sun),
  ];
}

export function actualLabels(
  picture: ActualPicture,
  look: Look,
  { charge, load, sun }: ActualLayout,
  scale: TimeScale,
): EndLabel[] {
  const { time, plan, actual, miss } = picture;
  const x = scale.x(time.startMs + time.steps * time.stepMs);
  const lastOf = (row: Float64Array) => row.findLastIndex(Number.isFinite);
  const of = (share: number, at: number, words: string, as: string) => ({
    x: at,
    y: charge.y(share),
    figure: percent(share),
    words,
    look: as,
    dotted: false,
  });
  const metered = actual.chargeShare;
  const last = metered === null ? -1 : lastOf(metered);
  const shares = [
    of(plan.chargeShare.at(-1)!, x, "planned", look),
    ...(last < 0 ? [] : [of(metered![last]!, scale.x(time.startMs + last * time.stepMs), "metered", "metered")]),
  ];
  const sums = (stratum: ActualLayout["load"], wh: { planned: number; actual: number } | null | undefined) =>
    wh == null
      ? []
      : spread(
          [
            {
              x,
              y: stratum.top + 20,
              figure: energy(wh.planned),
              words: "planned",
              look: `${look}-edge`,
              dotted: false,
            },
            { x, y: stratum.top + 48, figure: energy(wh.actual), words: "metered", look: "metered", dotted: false },
          ],
          stratum.top,
          stratum.bottom,
        );
  return [...spread(shares, charge.top, charge.bottom), ...sums(load, miss?.loadWh), ...sums(sun, miss?.sunWh)];
}

/** A line through what is there, broken where nothing is. */
export function brokenLine(
  time: TimePicture,
  scale: TimeScale,
  y: (value: number) => number,
  values: Float64Array,
): string {
  const path = line<number>(
    (_, i) => scale.x(time.startMs + i * time.stepMs),
    (value) => y(value),
  ).defined(Number.isFinite);
  return path(values) ?? "";
}
