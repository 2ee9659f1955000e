/**
 * drawing: pictures as SVG text, made without a DOM: the same on the page, in a file, on paper and in a report. Numbers ─► layout
 * and scale ─► paths ─► markup (`html`, which escapes what it is given). What one kind of entry draws is in its folder under `answers`.
 */
export { type Drawing, inlineSvg } from "./drawing.ts";
export type { DrawingRoom } from "./drawingRoom.ts";
export { html, Markup } from "./html.ts";
export { rulerDrawing } from "./rulerDrawing.ts";
export { svgDocument } from "./svgDocument.ts";
export { type TimeScale, timeScale } from "./timeScale.ts";
