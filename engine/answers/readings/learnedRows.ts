import { range } from "d3";
import { csvText } from "../../csvText.ts";
import { clockAt } from "../../ruler/rulerClock.ts";
import { stamp } from "../../ruler/stamp.ts";
import { figure } from "../../words/numbers.ts";
import type { Column } from "../column.ts";
import type { LearnedPicture } from "./learnedPicture.ts";

const BANDS = ["p5", "p25", "p50", "p75", "p95"] as const;
const WORDS = ["1 in 20 under", "1 in 4 under", "median", "1 in 4 over", "1 in 20 over"];

/** What stands over the columns of the bands, after the readings and before. */
export const LEARNED_HEADS = [...WORDS.map((words) => `${words}, %`), "median before, %"];

/** An instant with its shares, one for each of `LEARNED_HEADS`. */
export interface LearnedRow {
  readonly name: string;
  readonly figures: readonly string[];
}

export const LEARNED_COLUMNS: readonly Column<LearnedRow>[] = [
  { head: "At", cell: ({ name }) => name, isWords: true },
  ...LEARNED_HEADS.map((head, k) => ({ head, cell: ({ figures }: LearnedRow) => figures[k]! })),
];

/** The bands from the last reading to the end in figures. @param everyMs time from row to row */
export function learnedRows(picture: LearnedPicture, everyMs: number): LearnedRow[] {
  const { time, report, after, before } = picture;
  const left = time.steps - report.now.step;
  const every = Math.max(1, Math.round(everyMs / time.stepMs));
  return [...range(0, left, every), left].map((i) => {
    const { day, clock } = clockAt(time.ruler, report.now.ms + i * time.stepMs);
    const shares = [...BANDS.map((band) => after[band][i]!), before.p50[report.now.step + i]!];
    return { name: `${day} ${clock}`, figures: shares.map((share) => figure(100 * share, 1)) };
  });
}

export function learnedCsv(picture: LearnedPicture): string {
  const { time, report, after, before } = picture;
  const rows = range(0, time.steps - report.now.step + 1).map((i) => [
    stamp(time.ruler, report.now.ms + i * time.stepMs),
    ...BANDS.map((band) => (100 * after[band][i]!).toFixed(2)),
    ...BANDS.map((band) => (100 * before[band][report.now.step + i]!).toFixed(2)),
  ]);
  const heads = [...WORDS.map((words) => `${words} %`), ...WORDS.map((words) => `before: ${words} %`)];
  return csvText([["local time", ...heads], ...rows]);
}
