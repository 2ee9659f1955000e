import type { Drawing } from "../../drawing/drawing.ts";
import { html, type Markup } from "../../drawing/html.ts";
import type { ReachReport, ReachRow } from "../../reach/reachReport.ts";
import { inHundred } from "../../words/oddsWords.ts";
import type { Words } from "../../words/said.ts";
import { partWords } from "./reachWords.ts";

const ROW_PX = 34;
const HEAD_PX = 30;
const NAME_PX = 380;
const FIGURE_PX = 56;
const TOOTH_PX = 6;

/** Where a share lies on a lane. */
export const lanePx = (share: number, lengthPx: number) => 8 + share * (lengthPx - 16);

/** One lane: a ring as the plan stands, a short upright for the amount beside, a dot where the target is reached and a ring where it is not. */
export function lane(row: ReachRow, base: number, lengthPx: number, yPx: number): Markup {
  const x = (share: number) => lanePx(share, lengthPx);
  const end = row.holds.share;
  const beside = row.next.words === null ? null : row.next.holds.share;
  return html`<path class="${row.reaches ? "reach-line" : "reach-line reach-short"}" d="M${x(base)} ${yPx}H${x(end)}"/>${
    beside !== null && html`<path class="reach-beside" d="M${x(beside)} ${yPx - 6}v12"/>`
  }<circle class="reach-base" cx="${x(base)}" cy="${yPx}" r="4.5"/><circle class="${row.reaches ? "reach-end" : "reach-end reach-open"}" cx="${x(end)}" cy="${yPx}" r="4.5"/>`;
}

/** The target as a ruled line with teeth on the side that misses it. */
export function targetLine(targetShare: number, lengthPx: number, fromPx: number, toPx: number): Markup {
  const x = lanePx(targetShare, lengthPx);
  const teeth = Array.from(
    { length: Math.floor((toPx - fromPx) / TOOTH_PX) },
    (_, k) => `M${x} ${fromPx + 3 + k * TOOTH_PX}h-5`,
  );
  return html`<path class="reach-target" d="M${x} ${fromPx}V${toPx}${teeth.join("")}"/>`;
}

/** Lanes of all levers, or of what can stay at home, on one scale of odds. */
export function reachDrawing(report: ReachReport, said: readonly Words[], widthPx = 860, mostRows = 14): Drawing {
  const rows = (report.reaches ? report.spare : report.alone).slice(0, mostRows);
  const lanePxWide = widthPx - NAME_PX - FIGURE_PX;
  const heightPx = HEAD_PX + rows.length * ROW_PX + 6;
  const x = (share: number) => NAME_PX + lanePx(share, lanePxWide);
  const ticks = [0, 0.5, 1].filter((share) => Math.abs(share - report.targetShare) > 0.08);
  return {
    body: html`${ticks.map((share) => html`<text class="axis-value" x="${x(share)}" y="18" text-anchor="middle">${Math.round(100 * share)}</text>`)}<text class="bar-name" x="${x(report.targetShare)}" y="18" text-anchor="middle">${+(100 * report.targetShare).toFixed(1)}</text>${rows.map(
      (row, k) => {
        const y = HEAD_PX + k * ROW_PX + ROW_PX / 2;
        return html`<text class="bar-name" x="${NAME_PX - 12}" y="${y + 5}" text-anchor="end">${shortened(partWords(row))}</text><g transform="translate(${NAME_PX} 0)">${lane(row, report.base.share, lanePxWide, y)}</g><text class="end-figure" x="${widthPx - FIGURE_PX + 12}" y="${y + 5}">${inHundred(row.holds)}</text>`;
      },
    )}<g transform="translate(${NAME_PX} 0)">${targetLine(report.targetShare, lanePxWide, HEAD_PX - 4, heightPx - 4)}</g>`,
    widthPx,
    heightPx,
    label: said.map(({ text }) => text).join(""),
  };
}

/** Room for so many letters beside a lane. */
const MOST_LETTERS = 50;
const shortened = (text: string) =>
  text.length <= MOST_LETTERS ? text : `${text.slice(0, MOST_LETTERS - 1).trimEnd()}…`;
