import { type ClearnessYear, clearnessStatistics, FIGURES, figuresOf } from "./clearnessStatistics.ts";

/** Errors smaller than these are noise of rounding and of a finite ensemble. */
const FLOOR: Record<string, number> = { p1: 0.008, p2: 0.006, p3: 0.004 };
const LEAST_FLOOR = 0.005;

/** A record's figures and their sampling errors, a row a month, null where the month has none. */
export interface RecordFigures {
  readonly months: readonly (readonly number[] | null)[];
  readonly errors: readonly (readonly number[] | null)[];
}

/**
 * How far drawn years are from a record, for each of `FIGURES`, over its months: the mean difference, and the root of the
 * mean square in sampling errors of the record.
 */
export function againstRecord(drawn: readonly ClearnessYear[], record: RecordFigures) {
  const got = clearnessStatistics(drawn);
  const rows = got.flatMap((month, m) => {
    const wanted = record.months[m];
    const errors = record.errors[m];
    if (!month || !wanted || !errors) return [];
    return [figuresOf(month).map((value, k) => ({ off: value - wanted[k]!, error: errors[k]! }))];
  });
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    months: rows.length,
    difference: FIGURES.map((_, k) => mean(rows.map((row) => row[k]!.off))),
    inErrors: FIGURES.map((name, k) =>
      Math.sqrt(mean(rows.map((row) => (row[k]!.off / Math.max(row[k]!.error, FLOOR[name] ?? LEAST_FLOOR)) ** 2))),
    ),
  };
}
