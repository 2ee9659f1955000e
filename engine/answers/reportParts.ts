import { type Drawing, inlineSvg } from "../drawing/drawing.ts";
import { html, type Markup } from "../drawing/html.ts";
import type { Words } from "../words/said.ts";
import type { Column } from "./column.ts";
import type { Found } from "./found.ts";

/** A sentence with its figures heavy and the names of scenarios underlined in their own line. */
export function saidWords(words: readonly Words[]): Markup {
  return html`${words.map(({ text, as }) => (as === undefined ? text : html`<span class="answer-${as}">${text}</span>`))}`;
}

/** A drawing that scrolls sideways where the page is narrow; reachable by keyboard. */
export function picture(drawing: Drawing | null): Markup | null {
  if (drawing === null) return null;
  return html`<div class="wide" role="group" tabindex="0" aria-label="Picture">${inlineSvg(drawing)}</div>`;
}

/** A table whose rows begin with a name. */
export function table(
  caption: string,
  heads: readonly string[],
  rows: readonly { readonly name: string; readonly figures: readonly string[] }[],
): Markup {
  const [first, ...others] = heads;
  return html`<div class="wide" role="group" tabindex="0" aria-label="${caption}"><table><caption class="unseen">${caption}</caption><thead><tr><th scope="col">${first}</th>${others.map(
    (head) => html`<th scope="col">${head}</th>`,
  )}</tr></thead><tbody>${rows.map(
    ({ name, figures }) => html`<tr><th scope="row">${name}</th>${figures.map((text) => html`<td>${text}</td>`)}</tr>`,
  )}</tbody></table></div>`;
}

/** The same from columns, the first of which names the row. */
export function columnsTable<Row>(caption: string, columns: readonly Column<Row>[], rows: readonly Row[]): Markup {
  const lines = rows.map((row) => {
    const [name, ...figures] = columns.map(({ cell }) => cell(row));
    return { name: name!, figures };
  });
  return table(
    caption,
    columns.map(({ head }) => head),
    lines,
  );
}

/** A table that is long and stands behind a line to open; on paper it stays closed unless it was opened. */
export function foldedTable(title: string, inner: Markup): Markup {
  return html`<details><summary>${title}</summary>${inner}</details>`;
}

export function list(lines: readonly string[]): Markup {
  return html`<ul class="lines">${lines.map((line) => html`<li>${line}</li>`)}</ul>`;
}

/** What is wrong with results, or that they are not there yet; nothing when all is well. */
export function missing(founds: readonly Pick<Found<unknown>, "problems" | "result">[]): Markup | null {
  const sentences = [...new Set(founds.flatMap(({ problems }) => problems.map(({ message }) => message)))];
  if (sentences.length > 0) return html`${sentences.map((sentence) => html`<p class="wrong">${sentence}</p>`)}`;
  return founds.some(({ result }) => result === null) ? html`<p class="wrong">Not worked out yet.</p>` : null;
}
