import type { Drawing } from "../../drawing/drawing.ts";
import { html } from "../../drawing/html.ts";
import { energy } from "../../words/numbers.ts";
import type { RunPicture } from "../run/runPicture.ts";

const ROW_PX = 30;
const NAME_PX = 240;
const FIGURE_PX = 96;

/** What took the most energy as bars: dots for what is always on, lines for what is used. The rest is one bar. */
export function ledgerDrawing({ ledger }: RunPicture, widthPx = 1078, mostRows = 12): Drawing {
  const { loads } = ledger;
  const shown = loads.length <= mostRows ? loads : loads.slice(0, mostRows - 1);
  const rest = loads.slice(shown.length);
  const sum = (of: (line: (typeof loads)[number]) => number) => rest.reduce((total, line) => total + of(line), 0);
  const rows = [
    ...shown,
    ...(rest.length === 0
      ? []
      : [
          {
            name: `${rest.length} others`,
            alwaysWh: sum((line) => line.alwaysWh),
            usedWh: sum((line) => line.usedWh),
            totalWh: sum((line) => line.totalWh),
          },
        ]),
  ];
  const mostWh = Math.max(1, ...rows.map((line) => line.totalWh));
  const px = (wh: number) => (wh / mostWh) * (widthPx - NAME_PX - FIGURE_PX - 24);
  const bars = rows.map((line, k) => {
    const y = k * ROW_PX + 4;
    const name = line.name.length <= 28 ? line.name : `${line.name.slice(0, 27)}…`;
    return html`<text class="bar-name" x="${NAME_PX - 12}" y="${y + 15}" text-anchor="end">${name}</text><rect class="part part-load-dots" x="${NAME_PX}" y="${y}" width="${px(line.alwaysWh)}" height="20"/><rect class="part part-load-lines" x="${NAME_PX + px(line.alwaysWh)}" y="${y}" width="${px(line.usedWh)}" height="20"/><text class="end-figure" x="${NAME_PX + px(line.totalWh) + 10}" y="${y + 15}">${energy(line.totalWh)}</text>`;
  });
  const keyY = rows.length * ROW_PX + 10;
  const key = html`<rect class="part part-load-dots" x="${NAME_PX}" y="${keyY}" width="20" height="16"/><text x="${NAME_PX + 28}" y="${keyY + 13}">always on</text><rect class="part part-load-lines" x="${NAME_PX + 130}" y="${keyY}" width="20" height="16"/><text x="${NAME_PX + 158}" y="${keyY + 13}">when used</text>`;
  return {
    body: html`${bars}${key}`,
    widthPx,
    heightPx: keyY + 22,
    label: `Where the energy went: ${rows.map((line) => `${line.name} ${energy(line.totalWh)}`).join(", ")}.`,
  };
}
