import { html, type Markup } from "../../drawing/html.ts";
import type { PackLine, PackList } from "../../packing/packList.ts";
import { listSum, pieces } from "./packingWords.ts";
import { LIST_COLUMNS } from "./rows.ts";

const BOX = html`<svg class="pack-box" width="20" height="20" viewBox="0 0 20 20" aria-hidden="true"><path d="M1 1h18v18H1z"/></svg>`;

/** A list to print and to tick: two boxes a line, one for the way out and one for the way home. */
export function listMarkup(list: PackList): Markup {
  const [what, count, kg, who] = LIST_COLUMNS;
  const line = (of: PackLine) =>
    html`<tr><td class="pack-boxes">${BOX}</td><td class="pack-boxes">${BOX}</td><th scope="row">${what!.cell(of)}</th><td>${count!.cell(of)}</td><td>${kg!.cell(of)}</td><td class="pack-who">${who!.cell(of)}</td></tr>`;
  const section = ({ title, lines }: PackList["sections"][number]) =>
    html`<tbody><tr class="pack-section"><th scope="rowgroup" colspan="6">${title}</th></tr>${lines.map(line)}</tbody>`;
  return html`<table class="pack-list"><caption class="unseen">What to pack, with a box to tick on the way out and one on the way home</caption><thead><tr><th scope="col">out</th><th scope="col">home</th><td></td><th scope="col">${count!.head}</th><th scope="col">${kg!.head}</th><th scope="col" class="pack-who">${who!.head}</th></tr></thead>${list.sections.map(section)}<tbody><tr class="pack-all"><td></td><td></td><th scope="row">All</th><td></td><td colspan="2">${listSum(list)}</td></tr></tbody></table>${
    list.home.length > 0 &&
    html`<table class="pack-list pack-home"><caption>Stays at home</caption><tbody>${list.home.map(
      ({ name, count, why, who }) =>
        html`<tr><th scope="row">${pieces(name, count)}${who === null ? "" : `, ${who}`}</th><td class="pack-who">${why}</td></tr>`,
    )}</tbody></table>`
  }${list.heavy.length > 0 && html`<p>Two people lift: ${list.heavy.join("; ")}.</p>`}`;
}
