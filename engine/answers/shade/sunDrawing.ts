import type { Drawing } from "../../drawing/drawing.ts";
import { type DrawingRoom, SHEET_ROOM } from "../../drawing/drawingRoom.ts";
import { html } from "../../drawing/html.ts";
import { rulerDrawing } from "../../drawing/rulerDrawing.ts";
import { timeScale } from "../../drawing/timeScale.ts";
import { nameLines, rowWords, shadeVerdict } from "./shadeWords.ts";
import { stripShapes } from "./stripShapes.ts";
import { sunDays, usualDay } from "./sunHours.ts";
import type { Sunlight } from "./sunlight.ts";

const ROW_PX = 68;
const BAR_PX = 30;
const TOP_PX = 30;

/** Who sees the sun, group by group, on the ruler. */
export function sunDrawing(light: Sunlight, room: DrawingRoom = SHEET_ROOM): Drawing {
  const scale = timeScale(light.ruler, room.daysPx);
  const letters = Math.floor((room.labelsPx - 20) / 7.8);
  const rows = light.groups.map((group, k) => {
    const foot = TOP_PX + (k + 1) * ROW_PX - 18;
    const shapes = stripShapes(light, group, scale, BAR_PX);
    const lines = [...nameLines(group.name, letters), rowWords(usualDay(sunDays(light, group)))];
    return html`<g transform="translate(0 ${foot})"><path class="strip-open" d="${shapes.open}"/><path class="strip-part" d="${shapes.part}"/><path class="strip-dark" d="${shapes.dark}"/><path class="strip-away" d="${shapes.away}"/></g>${lines.map(
      (line, l) =>
        html`<text class="${l === lines.length - 1 ? "end-words" : "end-figure"}" x="${scale.widthPx + 12}" y="${foot - 24 + l * 20}">${line}</text>`,
    )}`;
  });
  return rulerDrawing({
    time: light,
    scale,
    room,
    heightPx: TOP_PX + light.groups.length * ROW_PX + 8,
    axis: [
      {
        title: "Who sees the sun, clear sky",
        how: "height: share of the beam; solid: open; hatched: in part; line: dark; dots: sun behind it or panel away",
        titleY: TOP_PX - 10,
        values: [],
      },
    ],
    labels: [],
    label: `Hours of sun on the ruler. ${shadeVerdict(light)}`,
    layers: [html`${rows}`],
  });
}
