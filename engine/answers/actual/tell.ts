import { html, type Markup } from "../../drawing/html.ts";
import { RULER_PX } from "../../drawing/rulerPx.ts";
import { energy, figure } from "../../words/numbers.ts";
import { type AnswersPage, nameOf } from "../answersPage.ts";
import { oddsOf } from "../forecast/ask.ts";
import type { Tell } from "../kind.ts";
import { list, missing, picture, saidWords, table } from "../reportParts.ts";
import { onRuler, SLIDE_ROOM } from "../slideParts.ts";
import { actualDrawing } from "./actualDrawing.ts";
import { actualLayout } from "./actualLayout.ts";
import {
  actualSentence,
  coverWords,
  endWords,
  FIGURE_HEADS,
  figureRow,
  lackingWords,
  leadingMiss,
  openWords,
  partsOf,
  points,
} from "./actualWords.ts";
import { actualOf } from "./ask.ts";
import type { ActualDoc } from "./doc.ts";

/** Height at which `actualDrawing` draws the charge. */
const CHARGE_PX = 220;

export const tellActual: Tell<ActualDoc> = {
  section: actualSection,
  drawing: (page, doc) => {
    const { result } = actualOf(page, doc);
    return result === null
      ? null
      : actualDrawing(result, oddsOf(page, doc.scenario).result, nameOf(page, doc.scenario), page.look(doc.scenario));
  },
  slide: (page, doc) => {
    const { result } = actualOf(page, doc);
    if (result === null) return { body: actualSection(page, doc) };
    const drawing = actualDrawing(
      result,
      oddsOf(page, doc.scenario).result,
      nameOf(page, doc.scenario),
      page.look(doc.scenario),
      SLIDE_ROOM,
    );
    // One chart to a slide: the charge, without load and sun beneath it.
    const heightPx = RULER_PX + actualLayout(result, CHARGE_PX).charge.bottom + 12;
    return {
      words: actualSentence(result, nameOf(page, doc.scenario), page.look(doc.scenario)),
      chart: onRuler({ ...drawing, heightPx }, result.time),
    };
  },
};

/** A plan with a meter's log over it, in a report. */
function actualSection(page: AnswersPage, doc: ActualDoc): Markup {
  if (doc.log === undefined) return html`<p>No log has been taken yet.</p>`;
  const found = actualOf(page, doc);
  const { result } = found;
  if (result === null) return html`${missing([found])}`;
  const name = nameOf(page, doc.scenario);
  const miss = leadingMiss(result);
  const { correction } = result;
  return html`${missing([found])}<p class="verdict">${saidWords(actualSentence(result, name, page.look(doc.scenario)))}</p><p class="more">${endWords(result)} ${coverWords(result)} Log: ${doc.log.name}.</p>${picture(
    actualDrawing(result, oddsOf(page, doc.scenario).result, nameOf(page, doc.scenario), page.look(doc.scenario)),
  )}${
    miss !== null &&
    html`${table(
      "What made the difference, in points of charge",
      ["Part", "Points", "±, 19 times in 20", "Energy"],
      partsOf(miss).map((part) => ({
        name: part.title,
        figures: [points(part.share), figure(200 * part.spread, 1), energy(part.wh)],
      })),
    )}${list(lackingWords(miss))}`
  }${
    correction !== null &&
    html`${table("What the log says of the plan's figures", FIGURE_HEADS, correction.figures.map(figureRow))}${list([
      ...openWords(correction),
      ...correction.remarks,
    ])}`
  }${list([...new Set([...doc.log.findings, ...result.findings])])}`;
}
