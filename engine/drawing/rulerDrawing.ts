import { quietWords } from "../ruler/rulerWords.ts";
import type { TimePicture } from "../ruler/timePicture.ts";
import type { AxisTitle } from "./axisTitle.ts";
import type { Drawing } from "./drawing.ts";
import type { DrawingRoom } from "./drawingRoom.ts";
import type { EndLabel } from "./endLabels.ts";
import { html, type Markup } from "./html.ts";
import { lookMark } from "./lookMark.ts";
import { rulerMarks } from "./rulerMarks.ts";
import { RULER_PX } from "./rulerPx.ts";
import type { TimeScale } from "./timeScale.ts";

/**
 * A drawing on the ruler, whole (`body`) and in the pieces that it is put together from: the page lets time scroll between titles that
 * stay. In all pieces x is 0 where the days begin and y is 0 under the ruler.
 */
export interface RulerDrawing extends Drawing {
  readonly time: TimePicture;
  readonly scale: TimeScale;
  readonly room: DrawingRoom;
  /** Height without the ruler. */
  readonly plotPx: number;
  /** Title of the uppermost chart. */
  readonly title: string;
  /** Titles and values at the left. */
  readonly axis: Markup;
  /** What lies between, from the ground up: nights and levels first. */
  readonly layers: readonly Markup[];
  /** Names at the right, each on its leader. */
  readonly names: Markup;
}

/** Charts under a ruler of their own: nights without a break, values at the left, names at the right. */
export function rulerDrawing(of: {
  readonly time: TimePicture;
  readonly scale: TimeScale;
  readonly room: DrawingRoom;
  readonly heightPx: number;
  readonly axis: readonly AxisTitle[];
  readonly labels: readonly EndLabel[];
  readonly label: string;
  readonly layers: readonly Markup[];
  /** What else stands at the right, from where the days end. */
  readonly beside?: Markup;
}): RulerDrawing {
  const { time, scale, room, heightPx, label } = of;
  const axis = titles(of.axis, room);
  const layers = [ground(time, scale, heightPx, of.axis), ...of.layers];
  const names = html`${of.labels.map((each) => endLabel(each, scale.widthPx))}${
    of.beside !== undefined && html`<g transform="translate(${scale.widthPx} 0)">${of.beside}</g>`
  }`;
  return {
    time,
    scale,
    room,
    plotPx: heightPx,
    title: of.axis[0]?.title ?? "Chart",
    axis,
    layers,
    names,
    // The page puts the pieces together itself, and only asks for the whole when somebody saves it.
    get body() {
      const silent = quietWords(time);
      return html`<g transform="translate(${room.axisPx} 0)">${rulerMarks(time, scale)}${
        silent !== null && html`<text class="ruler-hour" x="${scale.widthPx + 12}" y="33">${silent}</text>`
      }<g transform="translate(0 ${RULER_PX})">${layers}${axis}${names}</g></g>`;
    },
    widthPx: room.axisPx + scale.widthPx + room.labelsPx,
    heightPx: RULER_PX + heightPx,
    label,
  };
}

/** Nights, midnights and the levels of the values. */
function ground(time: TimePicture, scale: TimeScale, heightPx: number, axis: readonly AxisTitle[]): Markup {
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
  const levels = axis.flatMap(({ values }) =>
    values.map(({ y, isBase }) => {
      const at = Math.round(y) + 0.5;
      return html`<line class="${isBase ? "axis-base" : "axis-line"}" x1="0" x2="${scale.widthPx}" y1="${at}" y2="${at}"/>`;
    }),
  );
  return html`${nights}${midnights}${levels}`;
}

function titles(axis: readonly AxisTitle[], { axisPx, titlePx, isShort }: DrawingRoom): Markup {
  return html`${axis.map(
    ({ title, how, titleY, values }) =>
      html`<text class="title" x="${titlePx - axisPx}" y="${titleY}">${title}${!isShort && html`<tspan class="how" dx="14">${how}</tspan>`}</text>${values.map(
        ({ y, text }) => html`<text class="axis-value" x="-10" y="${y + 5}" text-anchor="end">${text}</text>`,
      )}`,
  )}`;
}

function endLabel({ look, x, y, labelY, dotted, figure, words }: EndLabel, widthPx: number): Markup {
  return html`<g class="end end-${look}"><path class="end-leader" d="M${x} ${y}H${widthPx - 6}L${widthPx + 4} ${labelY}h6"/>${
    dotted && html`<circle class="end-dot" cx="${x}" cy="${y}" r="2.5"/>`
  }${lookMark(look, x, y)}<text x="${widthPx + 16}" y="${labelY + 5}"><tspan class="end-figure">${figure}</tspan><tspan class="end-words" dx="8">${words}</tspan></text></g>`;
}
