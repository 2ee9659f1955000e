import type { Drawing } from "../../drawing/drawing.ts";
import { html } from "../../drawing/html.ts";
import { lookMark } from "../../drawing/lookMark.ts";
import { oddsRange } from "../../words/oddsWords.ts";
import { wrappedLines } from "../../words/wrappedLines.ts";
import type { PlanColumn } from "./planColumns.ts";
import { shortOdds } from "./rows.ts";
import { TALLY_PX, tallyKey, tallyStrokes, tallyWords } from "./tallyDrawing.ts";

const COLUMN_PX = TALLY_PX.width + 28;
const NAME_LINES = 2;
/** Letters of 16 px, heavy, that stand beside a mark. */
const NAME_LETTERS = 18;
const clipped = (line: string) => (line.length <= NAME_LETTERS ? line : `${line.slice(0, NAME_LETTERS - 1)}…`);

/** The odds of each scenario with its tally, side by side: what a table's picture is where it stands alone. */
export function oddsColumns(columns: readonly PlanColumn[]): Drawing {
  const figureY = 24 + NAME_LINES * 20 + 26;
  const tallyY = figureY + 16;
  const body = columns.map((column, k) => {
    const x = k * COLUMN_PX;
    const lines = wrappedLines(column.name, NAME_LETTERS).slice(0, NAME_LINES).map(clipped);
    return html`<g class="odds-column odds-${column.look}">${lookMark(column.look, x + 6, 14)}${lines.map(
      (line, l) => html`<text class="odds-name" x="${x + 18}" y="${20 + l * 20}">${line}</text>`,
    )}<text class="odds-large" x="${x}" y="${figureY}">${shortOdds(column.side.holds)}<tspan class="odds-range" dx="8">${oddsRange(column.side.holds)}</tspan></text><g transform="translate(${x} ${tallyY})">${tallyStrokes(column)}</g></g>`;
  });
  const keyY = tallyY + TALLY_PX.height + 24;
  return {
    body: html`${body}<text class="how" y="${keyY}">${tallyKey(columns).join(" · ")}</text>`,
    widthPx: Math.max(columns.length * COLUMN_PX, 640),
    heightPx: keyY + 8,
    label: columns.map((column) => `${column.name}: ${tallyWords(column)}`).join(" "),
  };
}
