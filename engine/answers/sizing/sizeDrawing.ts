import type { Drawing } from "../../drawing/drawing.ts";
import { html, type Markup } from "../../drawing/html.ts";
import type { MapStation } from "./mapStations.ts";
import { type SizeContours, sizeContours, targetName } from "./sizeContours.ts";
import { type SizeLayout, sizeLayout } from "./sizeLayout.ts";
import type { SizePicture } from "./sizePicture.ts";
import type { AxisWords } from "./sizingWords.ts";
import { optionRoom, stationRoom } from "./stationRoom.ts";

/** A map of sizes, and where its values lie on it. */
export interface SizeDrawing extends Drawing {
  readonly layout: SizeLayout;
}

/** Narrower than this a map has room for short titles only. */
const SHORT_PX = 400;
/** A station nearer to the edge than this has its name to the inside of it. */
const EDGE_PX = 60;

/**
 * Odds over two numbers as lines of equal odds, the target's with teeth on the side that misses it; null for a single row or column.
 * @param stations scenarios of the notebook that lie on the map
 */
export function sizeDrawing(
  picture: SizePicture,
  xAxis: AxisWords,
  yAxis: AxisWords | null,
  stations: readonly MapStation[],
  [widthPx, heightPx]: readonly [number, number] = [560, 400],
): SizeDrawing | null {
  const { report, options, answer } = picture;
  const { x, y } = report;
  if (yAxis === null || y === null || y.values.length < 2 || x.values.length < 2) return null;
  const layout = sizeLayout(report, widthPx, heightPx);
  const spot = (at: { readonly x: number; readonly y: number | null }) => ({
    x: layout.x(at.x),
    y: layout.y(at.y ?? 0),
  });
  const taken = [
    ...stations.flatMap((each) => stationRoom(spot(each), each.name)),
    ...options.map(({ cell }) => optionRoom(spot(cell))),
  ];
  const contours = lines(sizeContours(report, layout, taken), targetName(report.targetShare));
  const cells = report.rows.flatMap((row) =>
    row.cells.map((cell) => html`<circle class="size-cell" r="1.5" cx="${spot(cell).x}" cy="${spot(cell).y}"/>`),
  );
  const marks = options.map(({ cell }, k) => option(spot(cell), k + 1));
  return {
    body: html`<g class="size-map">${contours}${axes(layout, xAxis, yAxis)}${cells}${stations.map((each) => station(spot(each), each.name, layout))}${marks}</g>`,
    widthPx,
    heightPx,
    label: `Odds of holding over ${xAxis.title} and ${yAxis.title}. ${answer}`,
    layout,
  };
}

function lines({ areas, lines, target }: SizeContours, called: string): Markup {
  const along = (look: string, at: NonNullable<(typeof target)["label"]>, dy: number, text: string) =>
    html`<text class="${look}" text-anchor="middle" transform="translate(${at.x} ${at.y}) rotate(${at.turnDeg})" dy="${dy}">${text}</text>`;
  return html`<g class="data">${areas.map(({ path }) => html`<path class="size-area" d="${path}"/>`)}${lines.map(
    ({ path }) => html`<path class="size-line" d="${path}"/>`,
  )}${lines.map(({ label, in100 }) => label !== null && along("size-line-name", label, 5, String(in100)))}<path class="size-teeth" d="${target.teeth}"/><path class="size-target" d="${target.path}"/>${
    target.label !== null && along("size-target-name", target.label, -9, called)
  }</g>`;
}

function axes(layout: SizeLayout, xAxis: AxisWords, yAxis: AxisWords): Markup {
  const { left, right, top, bottom } = layout;
  const titleOf = ({ title, briefly }: AxisWords) => (layout.widthPx < SHORT_PX ? (briefly ?? title) : title);
  return html`<rect class="size-frame" x="${left}" y="${top}" width="${right - left}" height="${bottom - top}"/>${layout.yTicks.map(
    (value) =>
      html`<text class="axis-value" x="${left - 8}" y="${layout.y(value) + 5}" text-anchor="end">${yAxis.tick(value)}</text>`,
  )}${layout.xTicks.map(
    (value) =>
      html`<text class="axis-value" x="${layout.x(value)}" y="${bottom + 22}" text-anchor="middle">${xAxis.tick(value)}</text>`,
  )}<text class="title" x="0" y="14">${titleOf(yAxis)}</text><text class="title" x="${right}" y="${bottom + 46}" text-anchor="end">${titleOf(xAxis)}</text>`;
}

function station({ x, y }: { x: number; y: number }, name: string, { left, right }: SizeLayout): Markup {
  const anchor = x > right - EDGE_PX ? "end" : x < left + EDGE_PX ? "start" : "middle";
  return html`<g class="size-station" transform="translate(${x} ${y})"><path d="M0 -8L7.5 5.5H-7.5Z"/><circle r="1.6"/><text y="30" text-anchor="${anchor}">${name}</text></g>`;
}

function option({ x, y }: { x: number; y: number }, number: number): Markup {
  return html`<g class="size-option" transform="translate(${x} ${y})"><circle r="10"/><text y="5.5" text-anchor="middle">${String(number)}</text></g>`;
}
