import {
  type ClearnessYear,
  clearnessStatistics,
  FIGURES,
  figuresOf,
  sd,
} from "../../tests/truth/climate/clearnessStatistics.ts";

/** Sampling error of each month's figures: years drawn with replacement, over and over. */
export function bootstrapErrors(
  years: readonly ClearnessYear[],
  rounds: number,
  unit: () => number,
): (number[] | null)[] {
  const drawn = Array.from({ length: rounds }, () =>
    clearnessStatistics(years.map(() => years[Math.floor(unit() * years.length)]!)),
  );
  return Array.from({ length: 12 }, (_, m) => {
    const rows = drawn.flatMap((months) => (months[m] ? [figuresOf(months[m])] : []));
    if (rows.length < rounds / 2) return null;
    return FIGURES.map((_, k) => sd(rows.map((row) => row[k]!)));
  });
}
