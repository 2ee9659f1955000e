import { Marked } from "marked";
import { escaped } from "../../drawing/html.ts";
import { figureAt, type NoteFigure } from "./noteFigures.ts";

/** What a figure says, and whether that is `fresh`, `stale` or `unknown`. */
export type SayFigure = (figure: NoteFigure) => { readonly text: string; readonly state: string };

/** Addresses that a note may lead to; anything else, such as javascript: or data:, stays text. */
const ALLOWED_ADDRESS = /^(https?:\/\/|mailto:|#)/i;

/** A text that is markup's own escaping away from what was written, for rules that look at it. */
const isAllowed = (address: string) => ALLOWED_ADDRESS.test(address) && !/[\s<>"'\\]/.test(address);

/** Marks in one paragraph beyond which it is no longer text that somebody wrote; reading them takes time in the square of their number. */
const MOST_MARKS = 600;

/** Paragraphs that are made of marks, as they stand: every mark with the backslash that makes it a letter. */
function tamed(text: string): string {
  return text.replace(/[^\n]+(?:\n[^\n]+)*/g, (paragraph) => {
    const marks = paragraph.match(/[*_~`[\]>]/g)?.length ?? 0;
    return marks > MOST_MARKS ? paragraph.replace(/[*_~`[\]>]/g, "\\$&") : paragraph;
  });
}

/** Quotes and lists inside one another; the parser calls itself for each. */
const DEEPEST_NESTING = 20;
/** At each letter of a word the parser looks on to the word's end, for an address of mail. */
const LONGEST_WORD = 1000;
const CONTAINER = /[ \t]*(?:>|[*+-](?=[ \t])|\d{1,9}[.)](?=[ \t]))/y;
const RULE = /[ \t]*([-*_])(?:[ \t]*\1){2,}[ \t]*$/y;

/** Why a note is not read as Markdown; null where it is. */
function whyPlain(text: string): string | null {
  if (text.split("\n").some(isDeep))
    return `Lists or quotes nest more than ${DEEPEST_NESTING} deep here, so the note stands as it was written.`;
  if (text.split(/\s+/).some((word) => word.length > LONGEST_WORD))
    return `A word here has more than ${LONGEST_WORD} letters, so the note stands as it was written.`;
  return null;
}

/** Whether a line opens more quotes and lists inside one another than anybody writes; a rule made of dashes opens none. */
function isDeep(line: string): boolean {
  let at = 0;
  for (let depth = 0; depth <= DEEPEST_NESTING; depth++) {
    RULE.lastIndex = at;
    CONTAINER.lastIndex = at;
    if (RULE.test(line) || !CONTAINER.test(line)) return false;
    at = CONTAINER.lastIndex;
  }
  return true;
}

/**
 * Turns a note into HTML without a DOM: Markdown, with figures quoted from the results. HTML in a note is text like any other, pictures
 * become their words, and links lead only to the web, to mail, or down the page.
 */
export function noteHtml(text: string, say: SayFigure): string {
  const why = whyPlain(text);
  if (why !== null) return `<p>${why}</p>\n<pre><code>${escaped(text)}</code></pre>\n`;
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
          const figure = token.figure as NoteFigure;
          const said = say(figure);
          return `<span class="live live-${escaped(said.state)}" title="${escaped(figure.text)}">${escaped(said.text)}</span>`;
        },
      },
    ],
    renderer: {
      html: ({ text: source }) => escaped(source),
      // The entry's own title is the second level; a note's headings lie under it.
      heading({ tokens, depth }) {
        const level = Math.min(6, depth + 2);
        return `<h${level}>${this.parser.parseInline(tokens)}</h${level}>`;
      },
      link({ href, tokens }) {
        const words = this.parser.parseInline(tokens);
        return isAllowed(href) ? `<a href="${escaped(href)}" rel="noreferrer">${words}</a>` : words;
      },
      image: ({ text: words }) => escaped(words),
      code: ({ text: source }) => `<pre><code>${escaped(source)}</code></pre>`,
      checkbox: ({ checked }) => (checked ? "[x] " : "[ ] "),
      tablecell({ header, tokens }) {
        const tag = header ? "th" : "td";
        return `<${tag}>${this.parser.parseInline(tokens)}</${tag}>`;
      },
    },
  });
  return marked.parse(tamed(text), { async: false });
}
