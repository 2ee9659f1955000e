/**
 * drawing: pictures as SVG text, made without a DOM: the same on the page, in a file, on paper and in a report. Numbers ─► layout
 * and scale ─► paths ─► markup (`html`, which escapes what it is given). What one kind of entry draws is in its folder under `answers`.
 */
export type { AxisTitle } from "./axisTitle.ts";
export { bandArea, bandLine, stepAt } from "./bandPaths.ts";
export {
  type NameOnLine,
  nameOnLine,
  openPieces,
  type Point,
  pacedOut,
  pathOf,
  type Ring,
  type RingPoint,
} from "./contourLines.ts";
export { type Drawing, inlineSvg } from "./drawing.ts";
export { drawingPatterns } from "./drawingPatterns.ts";
export { type DrawingRoom, SHEET_ROOM } from "./drawingRoom.ts";
export { type EndLabel, spread, type UnplacedLabel } from "./endLabels.ts";
export { fontFace } from "./fontFace.ts";
export { frameBar } from "./frameBar.ts";
export { escaped, html, Markup } from "./html.ts";
export { lookMark } from "./lookMark.ts";
export { type Box, LETTER_PX, outside, turnedRoom } from "./nameRoom.ts";
export { type PlacedLabel, placeLabels, type WantedLabel } from "./placeLabels.ts";
export { reserveMark } from "./reserveMark.ts";
export { reserveTeeth } from "./reserveTeeth.ts";
export { type RulerDrawing, rulerDrawing } from "./rulerDrawing.ts";
export { rulerMarks } from "./rulerMarks.ts";
export { RULER_PX } from "./rulerPx.ts";
export { stacked } from "./stacked.ts";
export { svgDocument } from "./svgDocument.ts";
export { isSameScale, type TimeScale, timeScale } from "./timeScale.ts";
