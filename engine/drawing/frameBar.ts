import type { Span } from "../ruler/quietSpans.ts";
import { html, type Markup } from "./html.ts";
import type { TimeScale } from "./timeScale.ts";

/** The border bar: filled by night, open by day; heads every entry. */
export function frameBar(nights: readonly Span[], scale: TimeScale, y = 0): Markup {
  const filled = nights.map(
    ({ startMs, endMs }) =>
      html`<rect class="frame-night" x="${scale.x(startMs)}" y="${y}" width="${scale.x(endMs) - scale.x(startMs)}" height="7"/>`,
  );
  return html`<rect class="frame-open" x="0.5" y="${y + 0.5}" width="${scale.widthPx - 1}" height="6"/>${filled}`;
}
