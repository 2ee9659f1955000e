/** Text that is markup already, because `html` made it or somebody vouches for it. */
export class Markup {
  constructor(readonly text: string) {}
  toString(): string {
    return this.text;
  }
}

/** What may stand between the pieces of a template. */
export type Piece = Markup | string | number | null | undefined | false | readonly Piece[];

/** What no XML document may hold, not even spelled out (XML 1.0, production 2, Char); half a surrogate pair is no character either. */
const FORBIDDEN = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

/**
 * Text that no parser takes for markup, between tags and inside quoted attributes. What XML forbids is left out: a drawing with it in a
 * name would be no picture at all.
 */
export function escaped(text: string): string {
  return text
    .replace(FORBIDDEN, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");
}

function written(piece: Piece): string {
  if (piece instanceof Markup) return piece.text;
  if (Array.isArray(piece)) return piece.map(written).join("");
  if (piece === null || piece === undefined || piece === false) return "";
  if (typeof piece === "number") return String(Math.round(piece * 100) / 100);
  return escaped(String(piece));
}

/**
 * HTML or SVG from a template: whatever is put in is text and is escaped, unless `html` made it. Numbers keep two places, as fine as a
 * drawing needs. Attributes must be quoted in the template.
 */
export function html(parts: TemplateStringsArray, ...pieces: readonly Piece[]): Markup {
  return new Markup(parts.map((part, i) => (i === 0 ? part : written(pieces[i - 1]) + part)).join(""));
}
