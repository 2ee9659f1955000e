import type { Drawing } from "./drawing.ts";
import { drawingPatterns } from "./drawingPatterns.ts";
import { html, Markup } from "./html.ts";

const MARGIN_PX = 16;

/**
 * A drawing as a file that stands alone.
 * @param rules the rules that its classes name, with the colours in them
 */
export function svgDocument({ body, widthPx, heightPx, label }: Drawing, rules: string): string {
  const [width, height] = [widthPx + 2 * MARGIN_PX, heightPx + 2 * MARGIN_PX];
  // The rules hold no character that XML minds.
  return html`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-label="${label}"><title>${label}</title><style>${new Markup(rules)}</style>${drawingPatterns}<rect class="sheet-fill" width="${width}" height="${height}"/><g class="drawing" transform="translate(${MARGIN_PX} ${MARGIN_PX})">${body}</g></svg>
`.text;
}
