import { bandArea, bandLine } from "../../drawing/bandPaths.ts";
import { type DrawingRoom, SHEET_ROOM } from "../../drawing/drawingRoom.ts";
import { html } from "../../drawing/html.ts";
import { reserveMark } from "../../drawing/reserveMark.ts";
import { type RulerDrawing, rulerDrawing } from "../../drawing/rulerDrawing.ts";
import { timeScale } from "../../drawing/timeScale.ts";
import type { Look } from "../../words/look.ts";
import { chargeAxis, chargeLayout, fromNow, learnedLabels } from "./learnedLayout.ts";
import type { LearnedPicture } from "./learnedPicture.ts";

/** The forecast from the last reading on, over what was forecast before it, with the readings themselves. */
export function learnedDrawing(
  picture: LearnedPicture,
  name: string,
  look: Look,
  room: DrawingRoom = SHEET_ROOM,
  chargePx = 220,
): RulerDrawing {
  const { time, before, after, marks, report, fullAh } = picture;
  const layout = chargeLayout(chargePx);
  const scale = timeScale(time.ruler, room.daysPx);
  const { y } = layout;
  const since = fromNow(picture);
  const median = bandLine(since, scale, y, after.p50);
  const how = "rings: what was read, with its error. Dotted: as it was before the readings";
  const latest = marks.at(-1);
  const body = html`<g class="data learned-before">${[before.p5, before.p50, before.p95].map(
    (row) => html`<path d="${bandLine(time, scale, y, row)}"/>`,
  )}</g><g class="data series-${look}"><path class="band-wide" d="${bandArea(since, scale, y, after.p5, after.p95)}"/><path class="band-close" d="${bandArea(since, scale, y, after.p25, after.p75)}"/><path class="band-edge" d="${bandLine(since, scale, y, after.p5)}"/><path class="band-edge" d="${bandLine(since, scale, y, after.p95)}"/></g>${reserveMark(
    time,
    { reserveShare: report.reserveShare, fullAh },
    scale,
    y,
  )}<g class="data series-${look}"><path class="median-halo" d="${median}"/><path class="median" d="${median}"/></g>${marks.map(
    (mark) =>
      html`<g class="data reading-mark${mark.isPoor ? " reading-poor" : ""}${mark === latest ? " reading-latest" : ""}"><path d="M${scale.x(mark.ms)} ${y(mark.lowShare)}V${y(mark.highShare)}"/><circle cx="${scale.x(mark.ms)}" cy="${y(mark.share)}" r="6"/></g>`,
  )}`;
  return rulerDrawing({
    time,
    scale,
    room,
    heightPx: layout.heightPx,
    axis: [chargeAxis(fullAh, layout, how, room.isShort)],
    labels: learnedLabels(picture, look, layout, scale),
    label: `Charge over time, ${name}: as planned, and from the last reading to the end.`,
    layers: [body],
  });
}
