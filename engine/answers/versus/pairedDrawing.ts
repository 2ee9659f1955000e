import { bandArea, bandLine } from "../../drawing/bandPaths.ts";
import { type DrawingRoom, SHEET_ROOM } from "../../drawing/drawingRoom.ts";
import { html } from "../../drawing/html.ts";
import { type RulerDrawing, rulerDrawing } from "../../drawing/rulerDrawing.ts";
import { timeScale } from "../../drawing/timeScale.ts";
import type { Look } from "../../words/look.ts";
import { ampHours } from "../../words/numbers.ts";
import { pairedLabels, pairedLayout } from "./pairedLayout.ts";
import type { VersusPicture } from "./versusPicture.ts";

/** What one scenario has put by more than the other, hour by hour; null where the two do not last equally long. */
export function pairedDrawing(
  { time, paired }: VersusPicture,
  look: Look,
  room: DrawingRoom = SHEET_ROOM,
): RulerDrawing | null {
  if (paired === null) return null;
  const layout = pairedLayout(paired);
  const scale = timeScale(time.ruler, room.daysPx);
  const { y } = layout;
  const median = bandLine(time, scale, y, paired.p50);
  return rulerDrawing({
    time,
    scale,
    room,
    heightPx: layout.heightPx,
    axis: [layout.axis],
    labels: pairedLabels(time, paired, look, layout, scale),
    label: `Charge put by, hour by hour; at the end ${ampHours(paired.p50.at(-1)!)} in the median.`,
    layers: [
      html`<g class="data series-${look}"><path class="band-wide" d="${bandArea(time, scale, y, paired.p5, paired.p95)}"/><line class="axis-base" x1="0" x2="${scale.widthPx}" y1="${y(0)}" y2="${y(0)}"/><path class="median-halo" d="${median}"/><path class="median" d="${median}"/></g>`,
    ],
  });
}
