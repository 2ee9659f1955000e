import { scaleLinear } from "d3";
import type { Drawing } from "../../drawing/drawing.ts";
import { html, type Markup } from "../../drawing/html.ts";
import type { SpotsReport } from "../../spots/spotsReport.ts";
import { figure } from "../../words/numbers.ts";
import { spanWords } from "./spotsWords.ts";

const LEFT_PX = 44;
const RIGHT_PX = 8;
const TOP_PX = 26;
const FOOT_PX = 26;
const POINTS = ["N", "E", "S", "W", "N"];

/** What a roof brings over the heading of its vehicle, north to north: flat as it is, and raised towards the nose. Null for panels that are carried. */
export function headingDrawing(
  report: SpotsReport,
  [widthPx, heightPx]: readonly [number, number] = [388, 150],
): Drawing | null {
  const { heading, here, group } = report;
  if (heading === null) return null;
  const { headingDeg, flatWh, tiltedWh, tiltDeg, nowDeg } = heading;
  const all = [...flatWh, ...tiltedWh];
  const most = Math.max(...all);
  const spanWh = Math.max(most - Math.min(...all), 0.1 * most, 1);
  const x = (deg: number) => LEFT_PX + ((widthPx - LEFT_PX - RIGHT_PX) * deg) / 360;
  const y = scaleLinear([Math.max(0, most - 1.1 * spanWh), most + 0.1 * spanWh], [heightPx - FOOT_PX, TOP_PX]);
  const line = (wh: readonly number[]) =>
    wh.map((each, k) => `${k === 0 ? "M" : "L"}${x(headingDeg[k]!).toFixed(1)} ${y(each).toFixed(1)}`).join("");
  const ticks = y.ticks(3);
  const top = tiltedWh.indexOf(Math.max(...tiltedWh));
  const flatAt = flatNameAt(flatWh, tiltedWh);
  return {
    body: html`<g class="heading-strip">${ticks.map(
      (wh) =>
        html`<path class="heading-grid" d="M${LEFT_PX} ${y(wh)}H${widthPx - RIGHT_PX}"/><text class="axis-value" x="${LEFT_PX - 8}" y="${y(wh) + 5}" text-anchor="end">${figure(wh)}</text>`,
    )}${POINTS.map(
      (name, k) =>
        html`<text class="axis-value" x="${x(90 * k)}" y="${heightPx - 4}" text-anchor="${k === 0 ? "start" : k === 4 ? "end" : "middle"}">${name}</text>`,
    )}<path class="heading-raised" d="${line(tiltedWh)}"/><path class="heading-flat" d="${line(flatWh)}"/>${nameOn(
      `raised ${tiltDeg}°: ${figure(tiltedWh[top]!)}`,
      x(headingDeg[top]!),
      y(tiltedWh[top]!) - 8,
      widthPx,
    )}${nameOn("flat", x(headingDeg[flatAt]!), y(flatWh[flatAt]!) + (flatWh[flatAt]! > tiltedWh[flatAt]! ? -8 : 20), widthPx)}<circle class="spots-here" cx="${x(nowDeg)}" cy="${y(here.dayWh)}" r="5"/></g>`,
    widthPx,
    heightPx,
    label: `${group.name}, Wh ${spanWords(report)} over the heading: flat ${figure(Math.min(...flatWh))} to ${figure(Math.max(...flatWh))}, raised ${tiltDeg} degrees ${figure(Math.min(...tiltedWh))} to ${figure(most)}.`,
  };
}

/** Where the two lines lie farthest apart, away from the ends. */
function flatNameAt(flatWh: readonly number[], tiltedWh: readonly number[]): number {
  const gap = (k: number) => Math.abs(flatWh[k]! - tiltedWh[k]!);
  const inner = flatWh.map((_, k) => k).slice(2, -2);
  return inner.reduce((best, k) => (gap(k) > gap(best) ? k : best), inner[0]!);
}

function nameOn(text: string, x: number, y: number, widthPx: number): Markup {
  const half = text.length * 4;
  const held = Math.min(widthPx - RIGHT_PX - half, Math.max(LEFT_PX + half, x));
  return html`<text class="heading-name" x="${held}" y="${y}" text-anchor="middle">${text}</text>`;
}
