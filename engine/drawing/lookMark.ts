import { LOOKS, type Look } from "../words/look.ts";
import { html, type Markup } from "./html.ts";

const isMarked = (look: string): look is (typeof LOOKS)[number] => (LOOKS as readonly string[]).includes(look);

/** The mark of a scenario at a place, about 10 px wide; null for one that has none. */
export function lookMark(look: Look | string, x: number, y: number): Markup | null {
  if (!isMarked(look)) return null;
  const shapes = {
    first: html`<circle cx="${x}" cy="${y}" r="5"/>`,
    second: html`<circle cx="${x}" cy="${y}" r="4.5"/>`,
    third: html`<rect x="${x - 4.5}" y="${y - 4.5}" width="9" height="9"/>`,
    fourth: html`<path d="M${x} ${y - 5.5}L${x + 5.5} ${y + 4.5}H${x - 5.5}Z"/>`,
  };
  return html`<g class="mark mark-${look}">${shapes[look]}</g>`;
}
