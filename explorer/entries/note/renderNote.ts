import DOMPurify from "dompurify";
import { noteHtml, type SayFigure } from "../../../engine/answers/note/noteHtml.ts";

const TAGS = [
  "p", "br", "em", "strong", "del", "code", "pre", "blockquote", "ul", "ol", "li", "hr", "a",
  "h3", "h4", "h5", "h6", "table", "thead", "tbody", "tr", "th", "td", "span",
]; // biome-ignore format: a list of tags

/** A note's HTML for the page: after `noteHtml`, everything that is not plain text markup is taken out once more. */
export function renderNote(text: string, say: SayFigure): string {
  return DOMPurify.sanitize(noteHtml(text, say), {
    ALLOWED_TAGS: TAGS,
    ALLOWED_ATTR: ["href", "class", "title", "rel"],
    ALLOWED_URI_REGEXP: /^(https?:|mailto:|#)/i,
  });
}
