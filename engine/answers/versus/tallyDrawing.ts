import type { Drawing } from "../../drawing/drawing.ts";
import { html } from "../../drawing/html.ts";
import { wrappedLines } from "../../words/wrappedLines.ts";
import type { VersusPicture } from "./versusPicture.ts";
import { type Named, tallyOf100 } from "./versusWords.ts";

const LOOKS = ["both", "second", "first", "neither"] as const;
const STROKE_PX = 16;
const ROW_PX = 26;
const STROKES_PX = { width: 20 * STROKE_PX, height: 5 * ROW_PX };
const KEY_ROW_PX = 28;
const LINE_PX = 20;
const KEY_LEFT_PX = 20;
/** Mean width of a letter of 16 px, px. */
const LETTER_PX = 8.2;

/**
 * A hundred skies as strokes in five rows of twenty, by fives: open where it holds either way, filled where only the change makes it hold, dotted
 * where nothing does. Under them what each kind of stroke stands for.
 */
export function tallyDrawing(
  picture: VersusPicture,
  names: { readonly first: Named; readonly second: Named },
  widthPx = STROKES_PX.width + 110,
): Drawing {
  const counts = tallyOf100(picture);
  const looks = counts.flatMap((count, k) => Array.from({ length: count }, () => LOOKS[k]!));
  const strokes = looks.map((look, i) => {
    const x = (i % 20) * STROKE_PX + Math.floor((i % 20) / 5) * 1.5 + 1;
    return html`<rect class="stroke-${look} of-${look === "first" ? names.first.look : names.second.look}" x="${x}" y="${Math.floor(i / 20) * ROW_PX + 2}" width="8" height="19"/>`;
  });
  const words = tallyWords(counts, names);
  let y = STROKES_PX.height + 12;
  const keys = words.map(({ look, text }) => {
    const lines = wrappedLines(text, Math.floor((widthPx - KEY_LEFT_PX) / LETTER_PX));
    const key = html`<rect class="stroke-${look} of-${look === "first" ? names.first.look : names.second.look}" x="2" y="${y}" width="8" height="17"/><text y="${y + 14}">${lines.map(
      (line, l) => html`<tspan x="${KEY_LEFT_PX}" dy="${l === 0 ? 0 : LINE_PX}">${line}</tspan>`,
    )}</text>`;
    y += KEY_ROW_PX + (lines.length - 1) * LINE_PX;
    return key;
  });
  return {
    body: html`<g class="tally-strokes">${strokes}</g>${keys}`,
    widthPx,
    heightPx: y,
    label: `Of 100 skies: ${words.map(({ text }) => text).join(", ")}.`,
  };
}

/** What each kind of stroke stands for, with its number. */
function tallyWords(
  [both, second, first, neither]: readonly number[],
  names: { readonly first: Named; readonly second: Named },
) {
  return [
    { look: "both", text: `${both} hold either way` },
    { look: "second", text: `${second} only with ${names.second.name}` },
    ...(first! > 0 ? [{ look: "first", text: `${first} only with ${names.first.name}` }] : []),
    { look: "neither", text: `${neither} fail either way` },
  ];
}
