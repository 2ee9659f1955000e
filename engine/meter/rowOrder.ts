import { finding } from "./finding.ts";
import type { MeterFinding } from "./meterLog.ts";

/** Numbers of rows, and what is to be said of how they were found. */
export interface RowNumbers {
  readonly rows: readonly number[];
  readonly findings: readonly MeterFinding[];
}

/** Rows in order of time; those of one time as they stand in the file. @param lines of the file, by row */
export function rowsInOrder(times: readonly number[], lines: readonly number[]): RowNumbers {
  let backwards = 0;
  let firstLine = 0;
  for (let k = 1; k < times.length; k++) {
    if (times[k]! >= times[k - 1]!) continue;
    backwards++;
    if (firstLine === 0) firstLine = lines[k]!;
  }
  const rows = Array.from(times.keys());
  if (backwards === 0) return { rows, findings: [] };
  rows.sort((a, b) => times[a]! - times[b]! || a - b);
  const message = `Time runs backwards ${backwards} times, first on line ${firstLine}; the rows were put in order.`;
  return { rows, findings: [finding("out-of-order", message, backwards, firstLine)] };
}

/**
 * The first row of each time.
 * @param order rows in order of time
 * @param values columns, each with one value per row
 */
export function firstOfEachTime(
  order: readonly number[],
  times: readonly number[],
  lines: readonly number[],
  values: readonly (readonly number[])[],
): RowNumbers {
  const rows: number[] = [];
  let twice = 0;
  let differing = 0;
  let firstLine = 0;
  for (const k of order) {
    const before = rows.at(-1);
    if (before === undefined || times[k]! > times[before]!) {
      rows.push(k);
      continue;
    }
    twice++;
    if (firstLine === 0) firstLine = lines[k]!;
    if (values.some((column) => !Object.is(column[k], column[before]))) differing++;
  }
  if (twice === 0) return { rows, findings: [] };
  const differ = differing > 0 ? `, ${differing} of them with other values` : "";
  const message = `${twice} rows repeat a time${differ}, first on line ${firstLine}; the first row of each time was kept.`;
  return { rows, findings: [finding("duplicates", message, twice, firstLine)] };
}
