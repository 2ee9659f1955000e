import type { Drawing } from "../../drawing/drawing.ts";
import { html } from "../../drawing/html.ts";
import type { DriversReport } from "../../drivers/driversReport.ts";
import { byWeight, driversSentence, inHundredths } from "./driversWords.ts";

const ROW_PX = 30;
const NAME_PX = 240;
const FIGURE_PX = 72;

/** What the lowest charge depends on: of each factor what it does alone, lined, and with others, open. */
export function driversDrawing(report: DriversReport, widthPx = 860, mostRows = 12): Drawing {
  const lines = byWeight(report)
    .filter(({ margin }) => margin !== null)
    .slice(0, mostRows);
  const px = (share: number) => Math.min(1, Math.max(0, share)) * (widthPx - NAME_PX - FIGURE_PX);
  const rows = lines.map(({ name, margin }, k) => {
    const { first, total } = margin!;
    const y = k * ROW_PX + 4;
    const alone = px(Math.min(first.value, total.value));
    const strokes = Array.from(
      { length: Math.max(0, Math.floor(alone / 6)) },
      (_, i) => `M${NAME_PX + i * 6} ${y + 20}l5 -20`,
    ).join("");
    return html`<text class="bar-name" x="${NAME_PX - 12}" y="${y + 15}" text-anchor="end">${name}</text><rect class="driver-total" x="${NAME_PX}" y="${y}" width="${px(total.value)}" height="20"/><rect class="driver-first" x="${NAME_PX}" y="${y}" width="${alone}" height="20"/><path class="driver-lines" d="${strokes}"/><text class="end-figure" x="${NAME_PX + px(total.value) + 10}" y="${y + 15}">${inHundredths(total.value)}</text>`;
  });
  const keyY = lines.length * ROW_PX + 10;
  return {
    body: html`${rows}<rect class="driver-first" x="${NAME_PX}" y="${keyY}" width="20" height="16"/><path class="driver-lines" d="M${NAME_PX + 3} ${keyY + 16}l4 -16m3 16l4 -16"/><text x="${NAME_PX + 28}" y="${keyY + 13}">alone</text><rect class="driver-total" x="${NAME_PX + 110}" y="${keyY}" width="20" height="16"/><text x="${NAME_PX + 138}" y="${keyY + 13}">with others</text>`,
    widthPx,
    heightPx: keyY + 22,
    label: driversSentence(report),
  };
}
