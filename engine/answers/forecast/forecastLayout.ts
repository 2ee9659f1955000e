import { max, range, scaleLinear, tickStep } from "d3";
import type { Look } from "../../words/look.ts";
import type { OddsPicture } from "./oddsPicture.ts";

const TITLE_PX = 30;
const GAP_PX = 22;
const STRIP_ROW_PX = 24;
const SUN_PX = 84;

/** One scenario of a forecast, with the look that it has in all of the notebook. */
export interface Series {
  readonly id: string;
  readonly name: string;
  readonly look: Look;
  readonly picture: OddsPicture;
}

/** Scenarios that have a band each in one forecast; those after them show medians. */
export const MOST_BANDS = 2;

/** Share of members that are dark at some step of each hour. */
export function darkHours({ report, startMs, stepMs, steps }: OddsPicture): { ms: number; share: number }[] {
  const perHour = Math.max(1, Math.round(3_600_000 / stepMs));
  return range(0, steps, perHour).map((first) => ({
    ms: startMs + first * stepMs,
    share: max(report.darkShare.subarray(first, first + perHour)) ?? 0,
  }));
}

/** Heights and scales of a forecast's charts, from top to bottom on one drawing. */
export function forecastLayout(series: readonly Series[], chargePx: number) {
  const charge = { titleY: TITLE_PX - 10, top: TITLE_PX, bottom: TITLE_PX + chargePx };
  const strip = { titleY: charge.bottom + GAP_PX + TITLE_PX - 10, top: charge.bottom + GAP_PX + TITLE_PX };
  const rows = series.map((_, k) => strip.top + (k + 1) * STRIP_ROW_PX);
  const stripBottom = rows.at(-1) ?? strip.top;
  const sunTop = stripBottom + GAP_PX + TITLE_PX;
  const sunMostW = max(series, ({ picture }) => max(picture.solarW.p75)) ?? 0;
  const stepW = tickStep(0, Math.max(10, sunMostW), 2);
  const topW = Math.max(1, Math.ceil(sunMostW / stepW)) * stepW;
  const darkMost = max(series, ({ picture }) => max(picture.report.darkShare)) ?? 0;
  return {
    charge: { ...charge, y: scaleLinear([0, 1], [charge.bottom, charge.top]), ticks: [0, 0.2, 0.4, 0.6, 0.8, 1] },
    strip: { ...strip, rows, rowPx: STRIP_ROW_PX - 4, fullShare: Math.max(0.05, Math.ceil(darkMost * 20) / 20) },
    sun: {
      titleY: sunTop - 10,
      top: sunTop,
      bottom: sunTop + SUN_PX,
      y: scaleLinear([0, topW], [sunTop + SUN_PX, sunTop]),
      ticks: range(0, topW + stepW / 2, stepW),
    },
    heightPx: sunTop + SUN_PX + 12,
  };
}

export type ForecastLayout = ReturnType<typeof forecastLayout>;
