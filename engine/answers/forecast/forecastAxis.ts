import type { AxisTitle } from "../../drawing/axisTitle.ts";
import { ampHours, figure } from "../../words/numbers.ts";
import { type ForecastLayout, MOST_BANDS, type Series } from "./forecastLayout.ts";

/** Titles and values at the left of a forecast's charts; short ones where there is little room. */
export function forecastAxis(
  time: Series["picture"],
  layout: ForecastLayout,
  isShort: boolean,
  series: readonly Series[] = [],
): AxisTitle[] {
  const { charge, strip, sun } = layout;
  const isOneBank = series.every(({ picture }) => picture.fullAh === time.fullAh);
  const unit = (isLast: boolean, text: string) => (isLast && !isShort ? text : "");
  return [
    {
      title: isShort ? "Charge in the bank" : `Charge in the bank, % of ${isOneBank ? ampHours(time.fullAh) : "each"}`,
      how:
        series.length > MOST_BANDS
          ? "line: half of the skies are above. Bands, of the first two: middle half, nine in ten"
          : "line: half of the skies are above. Close: middle half. Wide: nine in ten",
      titleY: charge.titleY,
      values: charge.ticks.map((tick) => ({
        y: charge.y(tick),
        text: `${figure(tick * 100)}${unit(tick === 1, " %")}`,
      })),
    },
    {
      title: "Odds of being dark, hour by hour",
      how: `full height: ${figure(strip.fullShare * 100)} in 100`,
      titleY: strip.titleY,
      values: [],
    },
    {
      title: "From the sun, W",
      how: "half of the skies bring more; the tint is their middle half",
      titleY: sun.titleY,
      values: sun.ticks.map((tick, i) => ({
        y: sun.y(tick),
        text: `${figure(tick)}${unit(i === sun.ticks.length - 1, " W")}`,
      })),
    },
  ];
}
