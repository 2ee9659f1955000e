import { html, type Markup } from "../../drawing/html.ts";
import { stacked } from "../../drawing/stacked.ts";
import { changesInWords } from "../../fields/changesInWords.ts";
import type { AnswersPage } from "../answersPage.ts";
import type { Tell } from "../kind.ts";
import { list, missing, picture, saidWords } from "../reportParts.ts";
import { NOT_YET, shortened, wide } from "../slideParts.ts";
import { pairsOf, type VersusDoc } from "./ask.ts";
import { differsLines } from "./differsWords.ts";
import { gainsWords } from "./gainsWords.ts";
import { oddsColumns } from "./oddsColumns.ts";
import { pairedDrawing } from "./pairedDrawing.ts";
import { type PlanColumn, planColumns } from "./planColumns.ts";
import { decisionTable } from "./rows.ts";
import { TABLE_FOOT } from "./tableFoot.ts";
import { versusSentence } from "./versusWords.ts";

export const tellVersus: Tell<VersusDoc> = {
  section: (page, doc) => {
    const columns = planColumns(page, doc);
    return html`${missing(pairsOf(page, doc))}${
      columns.length > 0 &&
      html`<p class="verdict">${saidWords(versusSentence(columns))}</p>${decisionMarkup(page, doc, columns)}${picture(oddsColumns(columns))}${picture(pairedDrawing(columns))}`
    }`;
  },
  drawing: (page, doc) => {
    const columns = planColumns(page, doc);
    if (columns.length === 0) return null;
    const paired = pairedDrawing(columns);
    return stacked([oddsColumns(columns), ...(paired === null ? [] : [paired])]);
  },
  slide: (page, doc) => {
    const columns = planColumns(page, doc);
    if (columns.length === 0) return NOT_YET;
    return {
      words: versusSentence(columns),
      body: html`<div class="slide-table">${wide(oddsColumns(columns))}${tableOf(columns, null)}</div>`,
    };
  },
};

/** The whole table with what is the same in all, and who gains. */
function decisionMarkup(page: AnswersPage, doc: VersusDoc, columns: readonly PlanColumn[]): Markup {
  return html`${tableOf(columns, (k) => differsOf(page, doc, columns[k]!))}<p>The same in all: ${decisionTable(columns).same}</p><p>Who gains: ${saidWords(gainsWords(columns))}</p><p class="more">${TABLE_FOOT}</p>`;
}

function differsOf(page: AnswersPage, doc: VersusDoc, { id, pair }: PlanColumn): Markup {
  const lines = differsLines(page, doc, changesInWords)[doc.scenarios.indexOf(id)] ?? [];
  if (pair === null) return html`what the others are held against`;
  return lines.length === 0 ? html`nothing differs` : list(shortened(lines));
}

function tableOf(columns: readonly PlanColumn[], differs: ((k: number) => Markup) | null): Markup {
  return html`<div class="wide" role="group" tabindex="0" aria-label="Decision table"><table class="decision"><caption class="unseen">The scenarios in figures</caption><thead><tr><td></td>${columns.map(
    ({ name, look }) => html`<th scope="col">${saidWords([{ text: name, as: look }])}</th>`,
  )}</tr></thead><tbody>${
    differs !== null &&
    html`<tr><th scope="row">What differs</th>${columns.map((_, k) => html`<td>${differs(k)}</td>`)}</tr>`
  }${decisionTable(columns).rows.map(
    ({ name, cells }) =>
      html`<tr><th scope="row">${name}</th>${cells.map(({ text, isBest }) => html`<td>${isBest ? html`<strong>${text}</strong>` : text}</td>`)}</tr>`,
  )}</tbody></table></div>`;
}
