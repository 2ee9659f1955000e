import { bandArea, bandLine } from "../../drawing/bandPaths.ts";
import { type DrawingRoom, SHEET_ROOM } from "../../drawing/drawingRoom.ts";
import { html, type Markup } from "../../drawing/html.ts";
import { reserveMark } from "../../drawing/reserveMark.ts";
import { type RulerDrawing, rulerDrawing } from "../../drawing/rulerDrawing.ts";
import { type TimeScale, timeScale } from "../../drawing/timeScale.ts";
import { darkTicks } from "./darkTicks.ts";
import { forecastAxis } from "./forecastAxis.ts";
import { forecastLabels } from "./forecastLabels.ts";
import { type ForecastLayout, forecastLayout, MOST_BANDS, type Series } from "./forecastLayout.ts";
import { forecastSentence } from "./forecastWords.ts";

/**
 * Charge in nested bands, hours that may be dark, and the sun; null without a scenario.
 * @param hasSun false leaves the sun out, where one chart is enough
 */
export function forecastDrawing(
  series: readonly Series[],
  room: DrawingRoom = SHEET_ROOM,
  { chargePx, hasSun }: { readonly chargePx: number; readonly hasSun: boolean } = { chargePx: 220, hasSun: true },
): RulerDrawing | null {
  const [first] = series;
  if (first === undefined) return null;
  const time = first.picture;
  const layout = forecastLayout(series, chargePx);
  const scale = timeScale(time.ruler, room.daysPx);
  const axis = forecastAxis(time, layout, room.isShort, series);
  return rulerDrawing({
    time,
    scale,
    room,
    heightPx: hasSun ? layout.heightPx : (layout.strip.rows.at(-1) ?? layout.strip.top) + 8,
    axis: hasSun ? axis : axis.slice(0, 2),
    labels: forecastLabels(series, layout, scale),
    label: `Charge over time. ${forecastSentence(series)
      .map(({ text }) => text)
      .join("")}`,
    layers: [
      html`${series.map((each, k) => bands(each, k, layout, scale, hasSun))}${reserveMark(time, time, scale, layout.charge.y)}${series.map(
        ({ look, picture }) => {
          const path = bandLine(picture, scale, layout.charge.y, picture.charge.p50);
          return html`<g class="series-${look}"><path class="median-halo" d="${path}"/><path class="median" d="${path}"/></g>`;
        },
      )}`,
    ],
  });
}

function bands(
  { look, picture }: Series,
  row: number,
  { charge, strip, sun }: ForecastLayout,
  scale: TimeScale,
  hasSun: boolean,
): Markup {
  const { y } = charge;
  const { p5, p25, p75, p95 } = picture.charge;
  const foot = strip.rows[row] ?? strip.top;
  const ticks = html`<path class="dark-tick" d="${darkTicks(picture, scale, foot, strip)}"/>`;
  return html`<g class="data series-${look}">${
    row < MOST_BANDS &&
    html`<path class="band-wide" d="${bandArea(picture, scale, y, p5, p95)}"/><path class="band-close" d="${bandArea(picture, scale, y, p25, p75)}"/><path class="band-edge" d="${bandLine(picture, scale, y, p5)}"/><path class="band-edge" d="${bandLine(picture, scale, y, p95)}"/>`
  }<line class="axis-base" x1="0" x2="${scale.widthPx}" y1="${foot + 0.5}" y2="${foot + 0.5}"/>${ticks}${
    hasSun &&
    html`${
      row === 0 &&
      html`<path class="sun-band" d="${bandArea(picture, scale, sun.y, picture.solarW.p25, picture.solarW.p75)}"/>`
    }<path class="sun-line" d="${bandLine(picture, scale, sun.y, picture.solarW.p50)}"/>`
  }</g>`;
}
