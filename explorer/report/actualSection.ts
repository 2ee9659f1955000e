import { actualDrawing } from "../drawing/actualDrawing.ts";
import { html, type Markup } from "../drawing/html.ts";
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
} from "../entries/actual/actualWords.ts";
import type { EntryDoc } from "../notebook/notebook.ts";
import { energy, figure } from "../words/numbers.ts";
import type { ReportPage } from "./reportPage.ts";
import { list, missing, picture, saidWords, table } from "./reportParts.ts";

/** A plan with a meter's log over it, in a report. */
export function actualSection(page: ReportPage, doc: EntryDoc<"actual">): Markup {
  if (doc.log === undefined) return html`<p>No log has been taken yet.</p>`;
  const found = page.actual(doc);
  const { result } = found;
  if (result === null) return html`${missing([found])}`;
  const name = page.scenario(doc.scenario)?.name ?? doc.scenario;
  const miss = leadingMiss(result);
  const { correction } = result;
  return html`${missing([found])}<p class="verdict">${saidWords(actualSentence(result, name))}</p><p class="more">${endWords(result)} ${coverWords(result)} Log: ${doc.log.name}.</p>${picture(
    actualDrawing(result, page.odds(doc.scenario).result),
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
