import { runDrawing } from "../answers/run/runDrawing.ts";
import { type RunPicture, runPicture } from "../answers/run/runPicture.ts";
import type { Drawing } from "../drawing/drawing.ts";
import { html } from "../drawing/html.ts";
import { stacked } from "../drawing/stacked.ts";
import { svgDocument } from "../drawing/svgDocument.ts";
import type { Trace } from "../run/trace.ts";
import { wrappedLines } from "../words/wrappedLines.ts";
import { drawingRules } from "./drawingRules.ts";

const ROW_PX = 24;
/** At 16 px a letter of the face takes about 8. */
const LETTER_PX = 8;

/** A run as a file that stands alone: what came of it, of which scenario, and the drawing that the page shows. */
export function traceSvg(trace: Trace): string {
  const picture = runPicture(trace);
  const drawing = runDrawing(picture, "first");
  return svgDocument(stacked([said(picture, drawing.widthPx), drawing])!, drawingRules);
}

function said({ name, placeName, ruler, verdict }: RunPicture, widthPx: number): Drawing {
  const letters = Math.floor(widthPx / LETTER_PX);
  const rows = [
    ...wrappedLines(verdict.sentences[0]!, letters).map((text) => ({ text, look: "title said" })),
    ...wrappedLines(`${name} · ${placeName} · local time ${ruler.zone}`, letters).map((text) => ({
      text,
      look: "axis-value",
    })),
  ];
  return {
    body: html`${rows.map(({ text, look }, k) => html`<text class="${look}" x="0" y="${(k + 1) * ROW_PX - 8}">${text}</text>`)}`,
    widthPx,
    heightPx: rows.length * ROW_PX,
    label: `${name}.`,
  };
}
