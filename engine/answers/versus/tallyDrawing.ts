import type { Drawing } from "../../drawing/drawing.ts";
import { html, type Markup } from "../../drawing/html.ts";
import type { PlanColumn } from "./planColumns.ts";
import { tallyOf100 } from "./versusWords.ts";

export const TALLY_PX = { width: 184, height: 90 };
const STROKE_PX = TALLY_PX.width / 20;
const ROW_PX = TALLY_PX.height / 5;
const HIGH_PX = 14;

export const TALLY_KEY = [
  "open: holds anyway",
  "filled: only with this",
  "half: only without",
  "dot: fails either way",
];

/** Skies of a hundred that hold anyway, only with this scenario, only with the first, and neither way; they sum to 100. */
export function tallyCounts({ side, pair }: PlanColumn): readonly [number, number, number, number] {
  if (pair !== null) return tallyOf100(pair);
  const holds = Math.round(100 * side.holds.share);
  return [holds, 0, 0, 100 - holds];
}

/** What of the key a table's tallies show. */
export function tallyKey(columns: readonly PlanColumn[]): readonly string[] {
  return TALLY_KEY.filter((_, k) => k === 0 || columns.some((column) => tallyCounts(column)[k]! > 0));
}

/** A hundred skies as strokes in five rows of twenty, in the scenario's colour. */
export function tallyStrokes(column: PlanColumn): Markup {
  const looks = tallyCounts(column).flatMap((count, k) =>
    Array.from({ length: count }, () => (["open", "only", "lost", "neither"] as const)[k]!),
  );
  const strokes = looks.map((look, i) => {
    const left = Number(((i % 20) * STROKE_PX + 1).toFixed(1));
    const top = Math.floor(i / 20) * ROW_PX + 1;
    if (look === "neither")
      return html`<circle class="stroke-neither" cx="${left + 3}" cy="${top + HIGH_PX / 2}" r="1.2"/>`;
    const high = look === "lost" ? HIGH_PX / 2 : HIGH_PX;
    return html`<rect class="stroke-${look}" x="${left}" y="${top + HIGH_PX - high}" width="5" height="${high}"/>`;
  });
  return html`<g class="tally-strokes tally-${column.look}">${strokes}</g>`;
}

export function tallyWords(column: PlanColumn): string {
  const [both, only, lost, neither] = tallyCounts(column);
  if (column.pair === null) return `Of 100 skies ${both} hold, ${neither} fail.`;
  return `Of 100 skies ${both} hold anyway, ${only} only with this, ${lost > 0 ? `${lost} only without, ` : ""}${neither} fail either way.`;
}

/** The tally of one scenario by itself. */
export function tallyDrawing(column: PlanColumn): Drawing {
  return {
    body: tallyStrokes(column),
    widthPx: TALLY_PX.width,
    heightPx: TALLY_PX.height,
    label: tallyWords(column),
  };
}
