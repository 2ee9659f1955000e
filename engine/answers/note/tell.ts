import { html, Markup } from "../../drawing/html.ts";
import type { Tell } from "../kind.ts";
import type { NoteDoc } from "./ask.ts";
import { figureWords } from "./noteFigures.ts";
import { noteHtml } from "./noteHtml.ts";

export const tellNote: Tell<NoteDoc> = {
  section: (page, { text }) =>
    html`<div class="note-text">${new Markup(noteHtml(text, (wanted) => figureWords(page, wanted)))}</div>`,
  slide: (page, { text }) => ({
    body: html`<div class="slide-text">${new Markup(noteHtml(text, (wanted) => figureWords(page, wanted)))}</div>`,
  }),
};
