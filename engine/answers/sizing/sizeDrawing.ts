import type { Drawing } from "../../drawing/drawing.ts";
import { html, type Markup } from "../../drawing/html.ts";
import { optionRoom, stationRoom } from "./nameRoom.ts";
import { sizeContours, targetName } from "./sizeContours.ts";
import { sizeLayout } from "./sizeLayout.ts";
import type { SizePicture } from "./sizePicture.ts";
import type { AxisWords } from "./sizingWords.ts";

/**
 * Odds over two numbers as lines of equal odds, the target's with teeth on the side that misses it; null for a single row or column.
 * @param name of the scenario, which stands where its two numbers are
 */
export function sizeDrawing(
  picture: SizePicture,
  xAxis: AxisWords,
  yAxis: AxisWords | null,
  name: string,
  [widthPx, heightPx]: readonly [number, number] = [560, 400],
): Drawing | null {
  const { report, options, answer } = picture;
  const { x, y } = report;
  if (yAxis === null || y === null || y.values.length < 2 || x.values.length < 2) return null;
  const layout = sizeLayout(report, widthPx, heightPx);
  const along = (look: string, at: NonNullable<(typeof target)["label"]>, dy: number, text: string) =>
    html`<text class="${look}" text-anchor="middle" transform="translate(${at.x} ${at.y}) rotate(${at.turnDeg})" dy="${dy}">${text}</text>`;
  const cells = report.rows.flatMap((row) =>
    row.cells.map(
      (cell) => html`<circle class="size-cell" r="1.5" cx="${layout.x(cell.x)}" cy="${layout.y(cell.y ?? 0)}"/>`,
    ),
  );
  const marks = options.map(
    ({ cell }, k) =>
      html`<g class="size-option" transform="translate(${layout.x(cell.x)} ${layout.y(cell.y ?? 0)})"><circle r="10"/><text y="5.5" text-anchor="middle">${String(k + 1)}</text></g>`,
  );
  const axes: Markup = html`<rect class="size-frame" x="${layout.left}" y="${layout.top}" width="${layout.right - layout.left}" height="${layout.bottom - layout.top}"/>${layout.yTicks.map(
    (value) =>
      html`<text class="axis-value" x="${layout.left - 8}" y="${layout.y(value) + 5}" text-anchor="end">${yAxis.tick(value)}</text>`,
  )}${layout.xTicks.map(
    (value) =>
      html`<text class="axis-value" x="${layout.x(value)}" y="${layout.bottom + 22}" text-anchor="middle">${xAxis.tick(value)}</text>`,
  )}<text class="title" x="0" y="14">${yAxis.title}</text><text class="title" x="${layout.right}" y="${layout.bottom + 46}" text-anchor="end">${xAxis.title}</text>`;
  const isPresent =
    x.present !== null &&
    y.present !== null &&
    x.present >= x.values[0]! &&
    x.present <= x.values.at(-1)! &&
    y.present >= y.values[0]! &&
    y.present <= y.values.at(-1)!;
  const spot = (at: { x: number; y: number }) => ({ x: layout.x(at.x), y: layout.y(at.y) });
  const taken = [
    ...(isPresent ? stationRoom(spot({ x: x.present!, y: y.present! }), name) : []),
    ...options.map(({ cell }) => optionRoom(spot({ x: cell.x, y: cell.y ?? 0 }))),
  ];
  const { areas, lines, target } = sizeContours(report, layout, taken);
  return {
    body: html`<g class="size-map">${areas.map(({ path }) => html`<path class="size-area" d="${path}"/>`)}${lines.map(
      ({ path }) => html`<path class="size-line" d="${path}"/>`,
    )}${lines.map(({ label, in100 }) => label !== null && along("size-line-name", label, 5, String(in100)))}<path class="size-teeth" d="${target.teeth}"/><path class="size-target" d="${target.path}"/>${
      target.label !== null && along("size-target-name", target.label, -9, targetName(report.targetShare))
    }${axes}${cells}${
      isPresent &&
      html`<g class="size-station" transform="translate(${layout.x(x.present!)} ${layout.y(y.present!)})"><path d="M0 -8L7.5 5.5H-7.5Z"/><circle r="1.6"/><text y="30" text-anchor="middle">${name}</text></g>`
    }${marks}</g>`,
    widthPx,
    heightPx,
    label: `Odds of holding over ${xAxis.title} and ${yAxis.title}. ${answer}`,
  };
}
