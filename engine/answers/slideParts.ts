import type { Drawing } from "../drawing/drawing.ts";
import type { DrawingRoom } from "../drawing/drawingRoom.ts";
import { html, type Markup } from "../drawing/html.ts";
import { timeScale } from "../drawing/timeScale.ts";
import type { TimePicture } from "../ruler/timePicture.ts";
import type { SlideChart, SlideContent } from "./slide.ts";

/** At 1024 px a slide's drawing is shown half as large again, so that its 16 px text is 24 px high. */
export const SLIDE_ROOM = { daysPx: 432, axisPx: 40, labelsPx: 214, titlePx: 40, isShort: true } satisfies DrawingRoom;
export const SLIDE_PX = SLIDE_ROOM.daysPx + SLIDE_ROOM.axisPx + SLIDE_ROOM.labelsPx;
export const SLIDE_CHARGE_PX = 168;
const MOST_LINES = 7;

export const NOT_YET: SlideContent = { body: html`<p>Not worked out yet.</p>` };

/** A drawing on the ruler whose lines have no values to read. */
export function onRuler(drawing: Drawing, time: TimePicture): SlideChart {
  const scale = timeScale(time.ruler, SLIDE_ROOM.daysPx);
  return { drawing, time, scale, leftPx: SLIDE_ROOM.axisPx, marks: () => [] };
}

/** As many lines as a slide has room for, and how many more there are. */
export function shortened(lines: readonly string[]): readonly string[] {
  return lines.length <= MOST_LINES
    ? lines
    : [...lines.slice(0, MOST_LINES - 1), `and ${lines.length - MOST_LINES + 1} more`];
}

/** A drawing without time, as large as its place allows. */
export function wide({ body, widthPx, heightPx, label }: Drawing): Markup {
  return html`<svg class="slide-drawing" viewBox="0 0 ${widthPx} ${heightPx}" width="${widthPx}" height="${heightPx}" role="img" aria-label="${label}">${body}</svg>`;
}
