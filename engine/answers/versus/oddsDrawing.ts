import type { Drawing } from "../../drawing/drawing.ts";
import { html } from "../../drawing/html.ts";
import { inHundred, oddsRange } from "../../words/oddsWords.ts";
import { ODDS_HEIGHT_PX, ODDS_LEFT_PX, oddsAnchor, oddsRows, oddsRowWords, oddsX } from "./oddsRows.ts";
import type { VersusPicture } from "./versusPicture.ts";

/** Odds of both, each with the interval that its sample leaves open. */
export function oddsDrawing(
  picture: VersusPicture,
  names: { readonly first: string; readonly second: string },
  widthPx = 430,
): Drawing {
  const x = (share: number) => oddsX(share, widthPx);
  const scale = [0, 0.25, 0.5, 0.75, 1].map(
    (share) =>
      html`<line class="axis-line" x1="${x(share)}" x2="${x(share)}" y1="22" y2="152"/><text class="axis-value" x="${x(share)}" y="16" text-anchor="middle">${String(share * 100)}</text>`,
  );
  const rows = oddsRows(picture).map(({ name, y, first, second }) => {
    const isRight = first.share > 0.5;
    return html`<text class="end-figure" x="${ODDS_LEFT_PX - 14}" y="${y + 21}" text-anchor="end">${name}</text><g class="series-first"><path class="interval" d="M${x(second.low)} ${y}H${x(second.high)}"/><circle class="odds-dot" cx="${x(second.share)}" cy="${y}" r="5"/><text class="odds-figure" x="${x(second.share)}" y="${y + 22}" text-anchor="${oddsAnchor(second.share)}">${inHundred(second)} (${oddsRange(second)})</text></g><g class="series-second"><path class="interval" d="M${x(first.low)} ${y + 32}H${x(first.high)}"/><circle class="odds-ring" cx="${x(first.share)}" cy="${y + 32}" r="5"/><text class="odds-figure" x="${x(first.share) + (isRight ? -12 : 12)}" y="${y + 37}" text-anchor="${isRight ? "end" : "start"}">${inHundred(first)} (${oddsRange(first)})</text></g>`;
  });
  const head = html`<text class="axis-value" x="${ODDS_LEFT_PX - 14}" y="16" text-anchor="end">Of 100</text>`;
  return {
    body: html`${head}${scale}${rows}`,
    widthPx,
    heightPx: ODDS_HEIGHT_PX,
    label: `Of 100 skies. ${oddsRowWords(picture, names)}.`,
  };
}
