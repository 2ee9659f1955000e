import { bandArea } from "../../drawing/bandPaths.ts";
import { type DrawingRoom, SHEET_ROOM } from "../../drawing/drawingRoom.ts";
import { html } from "../../drawing/html.ts";
import { reserveMark } from "../../drawing/reserveMark.ts";
import { type RulerDrawing, rulerDrawing } from "../../drawing/rulerDrawing.ts";
import { timeScale } from "../../drawing/timeScale.ts";
import type { Look } from "../../words/look.ts";
import type { OddsPicture } from "../forecast/oddsPicture.ts";
import { actualAxis, actualLabels, actualLayout, brokenLine } from "./actualLayout.ts";
import type { ActualPicture } from "./actualPicture.ts";

/** What was metered over what was planned: charge in the band of all skies, load, and sun. */
export function actualDrawing(
  picture: ActualPicture,
  odds: OddsPicture | null,
  name: string,
  look: Look,
  room: DrawingRoom = SHEET_ROOM,
  chargePx = 220,
): RulerDrawing {
  const { time, plan, actual } = picture;
  const layout = actualLayout(picture, chargePx);
  const scale = timeScale(time.ruler, room.daysPx);
  const { y } = layout.charge;
  const path = (kind: string, row: Float64Array | null, at: (value: number) => number) =>
    row !== null && html`<path class="${kind}" d="${brokenLine(time, scale, at, row)}"/>`;
  const lines = (of: { chargeShare: Float64Array | null; loadW: Float64Array | null; sunW: Float64Array | null }) =>
    html`${path("median-halo", of.chargeShare, y)}${path("median", of.chargeShare, y)}${path("actual-thin", of.loadW, layout.load.y)}${path("actual-thin", of.sunW, layout.sun.y)}`;
  const hasBand = odds !== null && odds.startMs === time.startMs && odds.steps === time.steps;
  const body = html`${
    hasBand &&
    html`<g class="data series-${look}"><path class="band-wide" d="${bandArea(time, scale, y, odds.charge.p5, odds.charge.p95)}"/><path class="band-close" d="${bandArea(time, scale, y, odds.charge.p25, odds.charge.p75)}"/></g>`
  }${reserveMark(time, picture, scale, y)}<g class="data series-${look}">${lines(plan)}</g><g class="data series-metered">${lines(actual)}</g>`;
  return rulerDrawing({
    time,
    scale,
    room,
    heightPx: layout.heightPx,
    axis: actualAxis(picture, layout, room.isShort),
    labels: actualLabels(picture, look, layout, scale),
    label: `Charge, load and sun of ${name} as planned, and as the meter has them.`,
    layers: [body],
  });
}
