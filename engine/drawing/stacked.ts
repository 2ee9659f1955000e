import type { Drawing } from "./drawing.ts";
import { html, type Markup } from "./html.ts";

const GAP_PX = 28;

/** Drawings under one another as one. */
export function stacked(drawings: readonly Drawing[]): Drawing | null {
  if (drawings.length === 0) return null;
  const parts: Markup[] = [];
  let y = 0;
  for (const { body, heightPx } of drawings) {
    parts.push(html`<g transform="translate(0 ${y})">${body}</g>`);
    y += heightPx + GAP_PX;
  }
  return {
    body: html`${parts}`,
    widthPx: Math.max(...drawings.map(({ widthPx }) => widthPx)),
    heightPx: y - GAP_PX,
    label: drawings.map(({ label }) => label).join(" "),
  };
}
