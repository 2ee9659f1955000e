import { html } from "../../drawing/html.ts";
import { withLabels } from "../../fields/fieldWords.ts";
import { inHundred, oddsRange } from "../../words/oddsWords.ts";
import type { AnswersPage } from "../answersPage.ts";
import type { Tell } from "../kind.ts";
import { missing, picture, table } from "../reportParts.ts";
import { NOT_YET, wide } from "../slideParts.ts";
import { sizesOf } from "./ask.ts";
import type { SizingDoc } from "./doc.ts";
import { mapStations } from "./mapStations.ts";
import { sizeDrawing } from "./sizeDrawing.ts";
import { axisWords } from "./sizingWords.ts";

const SLIDE_MAP_PX: readonly [number, number] = [440, 310];

export const tellSizing: Tell<SizingDoc> = {
  section: (page, doc) => {
    const found = sizesOf(page, doc);
    const document = page.document(doc.scenario);
    const { result } = found;
    if (result === null || document === null) return html`${missing([found])}`;
    const { report } = result;
    const [across, up] = [axisWords(document, report.x), report.y === null ? null : axisWords(document, report.y)];
    return html`${missing([found])}<p class="verdict">${result.answer}</p>${picture(mapOf(page, doc))}<ol>${result.options.map(
      ({ sentence }) => html`<li>${sentence}</li>`,
    )}</ol>${result.more.map((sentence) => html`<p>${sentence}</p>`)}${table(
      `Of 100 skies so many hold. Across: ${across.title}${up === null ? "" : `; down: ${up.title}`}`,
      [up?.title ?? "Holds", ...report.x.values.map(across.tick)],
      [...report.rows].reverse().map((row) => ({
        name: row.y === null || up === null ? "Holds" : up.tick(row.y),
        figures: row.cells.map((cell) => `${briefly(cell.holds)} (${oddsRange(cell.holds)})${cell.meets ? " ✓" : ""}`),
      })),
    )}<p class="more">✓ meets the target. ${withLabels(result.fixed.join(" "))}</p>`;
  },
  drawing: (page, doc) => mapOf(page, doc),
  slide: (page, doc) => {
    const { result } = sizesOf(page, doc);
    if (result === null || page.document(doc.scenario) === null) return NOT_YET;
    const map = mapOf(page, doc, SLIDE_MAP_PX);
    const options = html`<ol class="slide-text">${result.options.map(({ sentence }) => html`<li>${sentence}</li>`)}</ol>`;
    return {
      words: [{ text: result.answer }],
      body: map === null ? options : html`<div class="slide-pair slide-pair-map">${wide(map)}${options}</div>`,
    };
  },
};

function mapOf(page: AnswersPage, doc: SizingDoc, sizePx?: readonly [number, number]) {
  const { result } = sizesOf(page, doc);
  const document = page.document(doc.scenario);
  if (result === null || document === null) return null;
  const { x, y } = result.report;
  const up = y === null ? null : axisWords(document, y);
  return sizeDrawing(result, axisWords(document, x), up, mapStations(page, document, result.report), sizePx);
}

/** ">99" for "more than 99": in a table there is no room for words. */
const briefly = (odds: { readonly share: number }) =>
  inHundred(odds).replace("more than ", ">").replace("fewer than ", "<");
