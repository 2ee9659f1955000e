import type { Drawing } from "../../drawing/drawing.ts";
import { html } from "../../drawing/html.ts";
import { TALLY_PX, tallyStrokes, tallyWords } from "./tallyStrokes.ts";
import type { VersusPicture } from "./versusPicture.ts";

const KEY_ROW_PX = 28;

/** A hundred skies as strokes, and under them what each kind of stroke stands for. */
export function tallyDrawing(
  picture: VersusPicture,
  names: { readonly first: string; readonly second: string },
): Drawing {
  const words = tallyWords(picture, names);
  const strokes = tallyStrokes(picture).map(
    ({ look, x, y }) => html`<rect class="stroke-${look}" x="${x}" y="${y}" width="8" height="19"/>`,
  );
  const keys = words.map(({ look, text }, k) => {
    const y = TALLY_PX.height + 12 + k * KEY_ROW_PX;
    return html`<rect class="stroke-${look}" x="2" y="${y}" width="8" height="17"/><text x="20" y="${y + 14}">${text}</text>`;
  });
  return {
    body: html`${strokes}${keys}`,
    widthPx: TALLY_PX.width + 100,
    heightPx: TALLY_PX.height + 12 + words.length * KEY_ROW_PX,
    label: `Of 100 skies: ${words.map(({ text }) => text).join(", ")}.`,
  };
}
