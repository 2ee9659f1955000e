import { NO_PERMIT } from "../../checks/cautions.ts";
import { fontFace } from "../../drawing/fontFace.ts";
import { html, Markup } from "../../drawing/html.ts";
import wiringCss from "../../drawing/wiring.css?raw";
import type { LimitsPicture } from "./ask.ts";
import { wiringDiagram } from "./wiringDrawing.ts";
import sheetCss from "./wiringSheet.css?raw";
import { isOver, takeCare, toPutRight, WIRING_COLUMNS, WIRING_NOTE, wiringTitle } from "./wiringWords.ts";

/** Room on a Letter sheet, the lower of the two, inside its margins, px; some of it is left for faces that run wider. */
const PAGE_PX = 915;
const LETTERS_IN_COLUMN = 38;
const LETTERS_IN_ROW = 34;
const LINE_PX = 22;
const LEAST_FIT = 0.3;

/** A plan's wiring on one page to print: the diagram, every run, what to put right and what can hurt somebody. One file without a script. */
export function wiringSheet(report: LimitsPicture): string {
  const { plan, place, when } = report.sheetOf;
  const diagram = wiringDiagram(report);
  const right = toPutRight(report);
  const care = takeCare(report);
  const [, ...columns] = WIRING_COLUMNS;
  const fit = fitOf(report, diagram.heightPx, right, care);
  const css = `${fontFace}${wiringCss}${sheetCss}:root{--fit:${fit}}`.replace(/\/\*[\s\S]*?\*\//g, "");
  return html`<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${plan}: wiring</title><style>${new Markup(css)}</style></head>
<body><main><p class="of">${place}, ${when}. ${plan}</p><h1>Wiring: <b>${wiringTitle(report)}</b></h1>
<svg viewBox="0 0 ${diagram.widthPx} ${diagram.heightPx}" role="img" aria-label="${diagram.label}">${diagram.body}</svg>
<table><thead><tr><th scope="col"></th><th scope="col">Run</th>${columns.map(({ head }) => html`<th scope="col">${head}</th>`)}</tr></thead><tbody>${report.wiring.map(
    (run) =>
      html`<tr${isOver(run) ? html` class="over"` : ""}><td class="number">${run.number}</td><th scope="row">${run.name}</th>${columns.map(({ cell }) => html`<td>${cell(run)}</td>`)}</tr>`,
  )}</tbody></table>
<p class="note">${WIRING_NOTE}</p>
<div class="columns"><section><h2>Put right</h2><ul>${
    right.length === 0
      ? html`<li>Nothing that is stated is over its limit.</li>`
      : right.map(({ where, change }) => html`<li><b>${where}</b>: ${change}</li>`)
  }</ul></section><section><h2>Take care</h2><ul>${care.map((words) => html`<li>${words}</li>`)}</ul></section></div>
<p class="foot">${NO_PERMIT}</p></main></body></html>
`.text;
}

/** How much smaller all of it has to be set to stay on one page; 1 where it fits as it is. */
function fitOf(
  { wiring }: LimitsPicture,
  diagramPx: number,
  right: readonly { readonly where: string; readonly change: string }[],
  care: readonly string[],
): number {
  const changes = right.map(({ where, change }) => `${where}: ${change}`);
  /** Height at a size: set smaller, a line of the same length holds more letters. */
  const heightPx = (fit: number) => {
    const linesOf = (text: string, letters: number) => Math.ceil((text.length * fit) / letters);
    const wordsPx = (texts: readonly string[]) =>
      texts.reduce((sum, text) => sum + linesOf(text, LETTERS_IN_COLUMN) * LINE_PX + 4, 0);
    const rowsPx = wiring.reduce((sum, { name }) => sum + Math.max(28, linesOf(name, LETTERS_IN_ROW) * LINE_PX), 40);
    const restPx = 84 + 2 * LINE_PX + 30 + Math.max(wordsPx(changes), wordsPx(care)) + 46;
    return fit * (diagramPx + rowsPx + restPx);
  };
  let fit = 1;
  while (fit > LEAST_FIT && heightPx(fit) > PAGE_PX) fit -= 0.01;
  return Math.round(100 * fit) / 100;
}
