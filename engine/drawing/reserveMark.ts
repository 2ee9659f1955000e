import type { TimePicture } from "../ruler/timePicture.ts";
import { ampHours, percent } from "../words/numbers.ts";
import { html, type Markup } from "./html.ts";
import { reserveTeeth } from "./reserveTeeth.ts";
import type { TimeScale } from "./timeScale.ts";

/** The reserve over a whole event, ruled, with teeth on its bad side and its name. */
export function reserveMark(
  { startMs, steps, stepMs }: TimePicture,
  { reserveShare, fullAh }: { readonly reserveShare: number; readonly fullAh: number },
  scale: TimeScale,
  y: (share: number) => number,
): Markup {
  const [from, to] = [scale.x(startMs), scale.x(startMs + steps * stepMs)];
  return html`<g class="reserve" transform="translate(0 ${y(reserveShare)})"><line x1="${from}" x2="${to}" y1="0" y2="0"/><path d="${reserveTeeth(from, to)}"/><text x="${from + 12}" y="-9">Reserve ${percent(reserveShare)}, ${ampHours(reserveShare * fullAh)}</text></g>`;
}
