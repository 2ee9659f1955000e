import { runDrawing } from "../answers/run/runDrawing.ts";
import { type RunPicture, runPicture } from "../answers/run/runPicture.ts";
import type { Drawing } from "../drawing/drawing.ts";
import { html } from "../drawing/html.ts";
import { stacked } from "../drawing/stacked.ts";
import { svgDocument } from "../drawing/svgDocument.ts";
import type { Trace } from "../run/trace.ts";
import { drawingRules } from "./drawingRules.ts";

const ROW_PX = 24;
/** At 16 px a letter of the face takes about 8. */
const LETTER_PX = 8;

/** A run as a file that stands alone: what came of it, of which scenario, and the drawing that the page shows. */
export function traceSvg(trace: Trace): string {
  const picture = runPicture(trace);
  const drawing = runDrawing(picture);
  return svgDocument(stacked([said(picture, drawing.widthPx), drawing])!, drawingRules);
}

function said({ name, placeName, ruler, verdict }: RunPicture, widthPx: number): Drawing {
  const letters = Math.floor(widthPx / LETTER_PX);
  const rows = [
    ...linesOf(verdict.sentences[0]!, letters).map((text) => ({ text, look: "title said" })),
    ...linesOf(`${name} · ${placeName} · local time ${ruler.zone}`, letters).map((text) => ({
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

/** Breaks a sentence into lines of at most `longest` characters, words that are longer apart. */
function linesOf(sentence: string, longest: number): string[] {
  const lines: string[] = [];
  for (const word of sentence.split(" ")) {
    const last = lines.length - 1;
    if (last >= 0 && lines[last]!.length + word.length < longest) lines[last] += ` ${word}`;
    else lines.push(word);
  }
  return lines;
}
