import type { Tell } from "../../engine/answers/kind.ts";
import { askRuler } from "../../engine/answers/kinds.ts";
import type { SlideChart, SlideContent } from "../../engine/answers/slide.ts";
import type { Markup } from "../../engine/drawing/html.ts";
import { html } from "../../engine/drawing/html.ts";
import { headlineOf } from "../../engine/notebook/headlineOf.ts";
import { letterOf } from "../../engine/notebook/letterOf.ts";
import type { Entry } from "../../engine/notebook/notebook.ts";
import type { ReportPage } from "../../engine/report/reportPage.ts";
import type { Tells } from "../../engine/report/tellsOf.ts";
import { dateSpan } from "../../engine/ruler/rulerClock.ts";
import type { Words } from "../../engine/words/said.ts";

/** One slide: a sentence, and one chart or a few lines. */
export interface Slide {
  readonly id: string;
  /** Letter of the entry; empty for the first slide. */
  readonly letter: string;
  readonly title: string;
  readonly words: readonly Words[];
  readonly chart: SlideChart | null;
  readonly body: Markup | null;
}

/** The notebook as slides in order: its answer first, then an entry each. */
export function slidesOf(page: ReportPage, tells: Tells): Slide[] {
  const notebook = page.notebook();
  const others = notebook.entries.map((entry, i): Slide => {
    const { words = [], chart = null, body = null } = contentOf(page, entry, tells.get(entry.kind)!);
    return { id: entry.id, letter: letterOf(i), title: entry.title, words, chart, body };
  });
  return [firstSlide(page), ...others];
}

function contentOf(page: ReportPage, { doc }: Entry, { slide, section }: Tell<unknown>): SlideContent {
  return slide === undefined ? { body: section(page, doc) } : slide(page, doc);
}

function firstSlide(page: ReportPage): Slide {
  const notebook = page.notebook();
  const answer = headlineOf(page, notebook);
  const run = notebook.scenarios.map(({ id }) => page.find(askRuler(id)).result).find((result) => result !== null);
  return {
    id: "answer-slide",
    letter: "",
    title: notebook.title,
    words: answer?.words ?? [],
    chart: null,
    body: html`<div class="slide-text">${answer?.words != null && html`<p>${answer.more}</p>`}${
      run !== undefined && html`<p>${run.placeName}, ${dateSpan(run.ruler)}</p>`
    }</div>`,
  };
}
