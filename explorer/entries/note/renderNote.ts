import DOMPurify from "dompurify";
import { Marked } from "marked";
import { figureAt, type NoteFigure } from "./noteFigures.ts";

const TAGS = [
  "p", "br", "em", "strong", "del", "code", "pre", "blockquote", "ul", "ol", "li", "hr", "a",
  "h3", "h4", "h5", "h6", "table", "thead", "tbody", "tr", "th", "td", "span",
]; // biome-ignore format: a list of tags

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}

/**
 * Turns a note into HTML that can do no harm: Markdown, with figures quoted from the results; then everything that is not plain text
 * markup is taken out, pictures and scripts with it.
 */
export function renderNote(
  text: string,
  say: (figure: NoteFigure) => { readonly text: string; readonly state: string },
): string {
  const marked = new Marked({
    gfm: true,
    extensions: [
      {
        name: "figure",
        level: "inline",
        start: (source) => source.indexOf("{"),
        tokenizer: (source) => {
          const found = figureAt(source);
          return found === null ? undefined : { type: "figure", raw: found.raw, figure: found.figure };
        },
        renderer: (token) => {
          const said = say(token.figure as NoteFigure);
          return `<span class="live live-${said.state}" title="${escaped((token.figure as NoteFigure).text)}">${escaped(said.text)}</span>`;
        },
      },
    ],
    renderer: {
      // HTML in a note is text like any other: it never reaches a parser as markup.
      html: ({ text: source }) => escaped(source),
      // The entry's own title is the second level; a note's headings lie under it.
      heading({ tokens, depth }) {
        const level = Math.min(6, depth + 2);
        return `<h${level}>${this.parser.parseInline(tokens)}</h${level}>`;
      },
    },
  });
  const html = marked.parse(text, { async: false });
  return DOMPurify.sanitize(html, {
    ALLOWED_TAGS: TAGS,
    ALLOWED_ATTR: ["href", "class", "title"],
    ALLOWED_URI_REGEXP: /^(https?:|#)/i,
  });
}
