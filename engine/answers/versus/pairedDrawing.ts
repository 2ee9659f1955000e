import { bandArea, bandLine } from "../../drawing/bandPaths.ts";
import { type DrawingRoom, SHEET_ROOM } from "../../drawing/drawingRoom.ts";
import { html } from "../../drawing/html.ts";
import { type RulerDrawing, rulerDrawing } from "../../drawing/rulerDrawing.ts";
import { timeScale } from "../../drawing/timeScale.ts";
import { ampHours } from "../../words/numbers.ts";
import { pairedLabels, pairedLayout, putByOf } from "./pairedLayout.ts";
import type { PlanColumn } from "./planColumns.ts";

/** Bands are for two at most; a third shows its median. */
const MOST_BANDS = 2;

/** What scenarios have put by more than the first, hour by hour; null where none lasts as long as it. */
export function pairedDrawing(columns: readonly PlanColumn[], room: DrawingRoom = SHEET_ROOM): RulerDrawing | null {
  const all = putByOf(columns);
  const [first] = all;
  if (first === undefined) return null;
  const { time } = first;
  const layout = pairedLayout(all);
  const scale = timeScale(time.ruler, room.daysPx);
  const { y } = layout;
  const bands = all
    .slice(0, MOST_BANDS)
    .map(
      ({ look, paired: { p5, p95 } }) =>
        html`<g class="data series-${look}"><path class="band-wide" d="${bandArea(time, scale, y, p5, p95)}"/></g>`,
    );
  const medians = all.map(({ look, paired }) => {
    const median = bandLine(time, scale, y, paired.p50);
    return html`<g class="data series-${look}"><path class="median-halo" d="${median}"/><path class="median" d="${median}"/></g>`;
  });
  return rulerDrawing({
    time,
    scale,
    room,
    heightPx: layout.heightPx,
    axis: [layout.axis],
    labels: pairedLabels(all, layout, scale),
    label: `Charge put by, hour by hour; at the end ${all
      .map(({ name, paired }) => `${ampHours(paired.p50.at(-1)!)} with ${name}`)
      .join(", ")} in the median.`,
    layers: [html`${bands}<line class="axis-base" x1="0" x2="${scale.widthPx}" y1="${y(0)}" y2="${y(0)}"/>${medians}`],
  });
}
