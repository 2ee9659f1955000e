import { html, type Markup } from "./html.ts";

/** A picture as SVG text: the same on the page, in a file and in a report, made without a DOM. */
export interface Drawing {
  readonly body: Markup;
  readonly widthPx: number;
  readonly heightPx: number;
  /** What it shows, as a sentence. */
  readonly label: string;
}

/** A drawing inside a page, which has the patterns (`drawingPatterns`) and the rules that its classes name. */
export function inlineSvg({ body, widthPx, heightPx, label }: Drawing): Markup {
  return html`<svg class="drawing" viewBox="0 0 ${widthPx} ${heightPx}" width="${widthPx}" height="${heightPx}" role="img" aria-label="${label}">${body}</svg>`;
}
