import { type DrawingRoom, SHEET_ROOM } from "../../drawing/drawingRoom.ts";
import { html, type Markup } from "../../drawing/html.ts";
import { type RulerDrawing, rulerDrawing } from "../../drawing/rulerDrawing.ts";
import { timeScale } from "../../drawing/timeScale.ts";
import { nameLines, rowWords } from "./shadeWords.ts";
import { stripShapes } from "./stripShapes.ts";
import { sunDays, usualDay } from "./sunHours.ts";
import type { Sunlight } from "./sunlight.ts";

const ROW_PX = 68;
const BAR_PX = 30;
const TOP_PX = 30;
const LINE_PX = 20;
/** Mean width of a letter of 16 px in a name, px. */
const LETTER_PX = 7.8;
/** Letters of a name that stands over its bar: as many as a phone has room for beside the hours. */
const LETTERS_OVER = 28;

/**
 * Who sees the sun, group by group, on the ruler. Names stand at the right; where time scrolls, over their bars with the titles, so that they
 * stay.
 */
export function sunDrawing(light: Sunlight, room: DrawingRoom = SHEET_ROOM): RulerDrawing {
  const scale = timeScale(light.ruler, room.daysPx);
  const rows = light.groups.map((group, k) => ({
    name: group.name,
    words: rowWords(usualDay(sunDays(light, group))),
    shapes: stripShapes(light, group, scale, BAR_PX),
    foot: TOP_PX + (k + 1) * ROW_PX - 18,
  }));
  const isOver = room.daysPx === null;
  const letters = Math.floor((room.labelsPx - 20) / LETTER_PX);
  return rulerDrawing({
    time: light,
    scale,
    room,
    heightPx: TOP_PX + rows.length * ROW_PX + 8,
    axis: [
      {
        title: "Who sees the sun, clear sky",
        how: "height: share of the beam; solid: open; hatched: in part; line: panel dark; dots: sun behind it or panel away",
        titleY: TOP_PX - 10,
        values: [],
      },
      ...rows
        .filter(() => isOver)
        .map(({ name, words, foot }) => ({
          title: `${nameLines(name, LETTERS_OVER)[0]!}: ${words}`,
          how: "",
          titleY: foot - BAR_PX - 8,
          values: [],
        })),
    ],
    labels: [],
    label: `Hours of sun on the ruler. ${rows.map(({ name, words }) => `${name}: ${words} on an average day`).join("; ")}.`,
    layers: [html`${rows.map(bar)}`],
    ...(isOver ? {} : { beside: html`${rows.map((row) => nameBeside(row, letters))}` }),
  });
}

interface Row {
  readonly name: string;
  readonly words: string;
  readonly foot: number;
}

function bar({ foot, shapes }: Row & { readonly shapes: ReturnType<typeof stripShapes> }): Markup {
  return html`<g transform="translate(0 ${foot})"><path class="strip-open" d="${shapes.open}"/><path class="strip-part" d="${shapes.part}"/><path class="strip-dark" d="${shapes.dark}"/><path class="strip-away" d="${shapes.away}"/></g>`;
}

function nameBeside({ name, words, foot }: Row, letters: number): Markup {
  const lines = [...nameLines(name, letters), words];
  return html`${lines.map(
    (line, l) =>
      html`<text class="${l === lines.length - 1 ? "end-words" : "end-figure"}" x="12" y="${foot - 24 + l * LINE_PX}">${line}</text>`,
  )}`;
}
