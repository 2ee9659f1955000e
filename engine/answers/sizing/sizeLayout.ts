import { scaleLinear } from "d3";
import type { SizeReport } from "../../size/sizeReport.ts";

const LEFT_PX = 60;
const RIGHT_PX = 20;
const TOP_PX = 40;
const BOTTOM_PX = 54;
/** Ticks nearer than this run into one another. */
const TICK_PX = 38;

/** Where a map's values lie on its drawing. */
export function sizeLayout({ x, y }: SizeReport, widthPx: number, heightPx: number) {
  const toX = scaleLinear([x.values[0]!, x.values.at(-1)!], [LEFT_PX, widthPx - RIGHT_PX]);
  const rows = y?.values ?? [0];
  const toY = scaleLinear([rows[0]!, rows.at(-1)!], [heightPx - BOTTOM_PX, TOP_PX]);
  return {
    widthPx,
    heightPx,
    left: LEFT_PX,
    right: widthPx - RIGHT_PX,
    top: TOP_PX,
    bottom: heightPx - BOTTOM_PX,
    x: toX,
    y: toY,
    xTicks: apart(x.values, toX, TICK_PX),
    yTicks: apart(rows, toY, 24),
  };
}

export type SizeLayout = ReturnType<typeof sizeLayout>;

/** The values that can be written beside one another; the last one is always among them. */
function apart(values: readonly number[], to: (value: number) => number, leastPx: number): number[] {
  const kept: number[] = [];
  for (const value of [...values].reverse()) {
    const before = kept.at(-1);
    if (before === undefined || Math.abs(to(value) - to(before)) >= leastPx) kept.push(value);
  }
  return kept.reverse();
}

/** Place of the value nearest to a pixel. */
export function nearest(values: readonly number[], to: (value: number) => number, px: number): number {
  let best = 0;
  values.forEach((value, k) => {
    if (Math.abs(to(value) - px) < Math.abs(to(values[best]!) - px)) best = k;
  });
  return best;
}
