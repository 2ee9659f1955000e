import type { Drawing } from "../../drawing/drawing.ts";
import { html } from "../../drawing/html.ts";
import { lookMark } from "../../drawing/lookMark.ts";
import { inHundred, oddsRange } from "../../words/oddsWords.ts";
import type { VersusPicture } from "./versusPicture.ts";
import type { Named } from "./versusWords.ts";

const LEFT_PX = 92;
const RIGHT_PX = 16;
const HEIGHT_PX = 158;

/** Odds of both, each with its mark and the interval that its sample leaves open; the one that is judged above. */
export function oddsDrawing(
  { first, second }: VersusPicture,
  names: { readonly first: Named; readonly second: Named },
  widthPx = 430,
): Drawing {
  const x = (share: number) => LEFT_PX + share * (widthPx - LEFT_PX - RIGHT_PX);
  const rows = [
    { name: "Holds", y: 44, second: second.holds, first: first.holds },
    { name: "Goes dark", y: 116, second: second.dark, first: first.dark },
  ];
  const head = html`<text class="axis-value" x="${LEFT_PX - 14}" y="16" text-anchor="end">Of 100</text>`;
  const scale = [0, 0.25, 0.5, 0.75, 1].map(
    (share) =>
      html`<line class="axis-line" x1="${x(share)}" x2="${x(share)}" y1="22" y2="152"/><text class="axis-value" x="${x(share)}" y="16" text-anchor="middle">${String(share * 100)}</text>`,
  );
  const bars = rows.map(({ name, y, first, second }) => {
    const isRight = first.share > 0.5;
    const anchor = second.share > 0.8 ? "end" : second.share < 0.2 ? "start" : "middle";
    return html`<text class="end-figure" x="${LEFT_PX - 14}" y="${y + 21}" text-anchor="end">${name}</text><g class="odds-${names.second.look}"><path class="interval" d="M${x(second.low)} ${y}H${x(second.high)}"/>${lookMark(names.second.look, x(second.share), y)}<text class="odds-figure" x="${x(second.share)}" y="${y + 22}" text-anchor="${anchor}">${inHundred(second)} (${oddsRange(second)})</text></g><g class="odds-${names.first.look}"><path class="interval" d="M${x(first.low)} ${y + 32}H${x(first.high)}"/>${lookMark(names.first.look, x(first.share), y + 32)}<text class="odds-figure" x="${isRight ? x(first.low) - 10 : x(first.high) + 10}" y="${y + 37}" text-anchor="${isRight ? "end" : "start"}">${inHundred(first)} (${oddsRange(first)})</text></g>`;
  });
  const words = rows.map(
    (row) => `${row.name}: ${names.second.name} ${inHundred(row.second)}, ${names.first.name} ${inHundred(row.first)}`,
  );
  return {
    body: html`<g class="odds-bars">${head}${scale}${bars}</g>`,
    widthPx,
    heightPx: HEIGHT_PX,
    label: `Of 100 skies. ${words.join("; ")}.`,
  };
}
