import { mkdirSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect } from "vitest";

/** One line of the accuracy table: what was compared with whom, how far off it may be, and how far off it was. */
export interface TruthRow {
  /** The quantity, in words a reader of the table knows: "sun elevation above the horizon". */
  what: string;
  /** The published source, with year; "common practice, no source" or "from memory" where that is so. */
  source: string;
  /** The largest error allowed, in `unit`. */
  tolerance: number;
  /** Why the tolerance is that and no less. */
  why: string;
  /** The largest error met, in `unit`, same sign convention as the tolerance. */
  worst: number;
  unit: string;
  /** How many values were compared. */
  n: number;
}

/** A line of the table that could not be filled in, and the reason. */
export interface SkippedRow {
  what: string;
  source: string;
  skipped: string;
}

/** Rows of each file of tests: several share this module. */
const rowsOf = new Map<string, (TruthRow | SkippedRow)[]>();
const folder = join(dirname(fileURLToPath(import.meta.url)), "../../.cache/truth");

/**
 * Puts one comparison into the accuracy table. Call it before the assertion, so that a failing value is seen too.
 * Rows gather in this process and go into `.cache/truth/<test file>.json`, from which the table is printed.
 */
export function record(row: TruthRow): void {
  keep({ ...row });
}

/** Says in the table that a comparison was left out on this machine, and why. */
export function recordSkipped(row: SkippedRow): void {
  keep({ ...row });
}

function keep(row: TruthRow | SkippedRow): void {
  const testPath = expect.getState().testPath ?? "unnamed.test.ts";
  const rows = rowsOf.get(testPath) ?? [];
  rowsOf.set(testPath, rows);
  const at = rows.findIndex((other) => other.what === row.what && other.source === row.source);
  if (at >= 0) rows[at] = row;
  else rows.push(row);
  const name = `${basename(dirname(testPath))}-${basename(testPath).replace(/\.test\.tsx?$/, "")}`;
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${name}.json`), `${JSON.stringify(rows, null, 1)}\n`);
}
