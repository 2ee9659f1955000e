import type { TimePicture } from "../ruler/timePicture.ts";
import type { AxisTitle } from "./axisTitle.ts";
import type { Drawing } from "./drawing.ts";
import type { EndLabel } from "./endLabels.ts";
import { html, type Piece } from "./html.ts";
import { rulerMarks } from "./rulerMarks.ts";
import { RULER_PX } from "./rulerPx.ts";
import type { TimeScale } from "./timeScale.ts";

/** Room of a drawing: for the days, left of them for values, right of them for names. */
export interface DrawingRoom {
  readonly daysPx: number;
  readonly axisPx: number;
  readonly labelsPx: number;
  /** Whether titles are kept short and go without their explanation. */
  readonly isShort: boolean;
}

/** As wide as the sheet; what reports and files take. */
export const SHEET_ROOM: DrawingRoom = { daysPx: 864, axisPx: 64, labelsPx: 214, isShort: false };

/** Charts under a ruler of their own: nights without a break, values at the left, names at the right. */
export function rulerDrawing(of: {
  readonly time: TimePicture;
  readonly scale: TimeScale;
  readonly room: DrawingRoom;
  readonly heightPx: number;
  readonly axis: readonly AxisTitle[];
  readonly labels: readonly EndLabel[];
  readonly label: string;
  readonly body: Piece;
}): Drawing {
  const { time, scale, room, heightPx, axis } = of;
  const { widthPx } = scale;
  const nights = time.nights.map(
    ({ startMs, endMs }) =>
      html`<rect class="night" x="${scale.x(startMs)}" width="${scale.x(endMs) - scale.x(startMs)}" height="${heightPx}"/>`,
  );
  const midnights = time.ruler.days
    .slice(1)
    .map(
      ({ startMs }) =>
        html`<line class="midnight" x1="${scale.x(startMs)}" x2="${scale.x(startMs)}" y1="0" y2="${heightPx}"/>`,
    );
  const lines = axis.flatMap(({ values }) =>
    values.map(({ y }) => {
      const at = Math.round(y) + 0.5;
      return html`<line class="axis-line" x1="0" x2="${widthPx}" y1="${at}" y2="${at}"/>`;
    }),
  );
  const titles = axis.map(
    ({ title, how, titleY, values }) =>
      html`<text class="title" x="0" y="${titleY}">${title}${!room.isShort && html`<tspan class="how" dx="14">${how}</tspan>`}</text>${values.map(
        ({ y, text }) => html`<text class="axis-value" x="-10" y="${y + 5}" text-anchor="end">${text}</text>`,
      )}`,
  );
  const names = of.labels.map(
    (label) =>
      html`<g class="end end-${label.look}"><path class="end-leader" d="M${label.x} ${label.y}H${widthPx - 6}L${widthPx + 4} ${label.labelY}h6"/>${
        label.dotted && html`<circle class="end-dot" cx="${label.x}" cy="${label.y}" r="2.5"/>`
      }<text x="${widthPx + 16}" y="${label.labelY + 5}"><tspan class="end-figure">${label.figure}</tspan><tspan class="end-words" dx="8">${label.words}</tspan></text></g>`,
  );
  const body = html`<g transform="translate(${room.axisPx} 0)">${rulerMarks(time, scale)}<g transform="translate(0 ${RULER_PX})">${nights}${midnights}${lines}${of.body}${titles}${names}</g></g>`;
  return {
    body,
    widthPx: room.axisPx + widthPx + room.labelsPx,
    heightPx: RULER_PX + heightPx,
    label: of.label,
  };
}
