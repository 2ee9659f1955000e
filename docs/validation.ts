import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { accuracyRows, TRUTH_FOLDER } from "../tests/accuracyRows.ts";
import type { SkippedRow, TruthRow } from "../tests/truth/record.ts";
import { mdTable } from "./mdTable.ts";
import { keptReliability, reliabilityText } from "./reliability.ts";

/** What each folder of truth tests is about, in the order of the computation. */
const GROUPS: Readonly<Record<string, string>> = {
  sky: "Sun, sky and climate",
  climate: "Drawn weather",
  place: "Place and weather files",
  shade: "Shade",
  array: "Panels, controllers and cables",
  load: "Loads",
  bank: "Bank",
  source: "Sources",
  run: "Whole runs",
  checks: "Wiring and limits",
  actual: "Plan against actual",
  learn: "Learning from readings",
  promise: "Promises",
  browser: "In a browser",
};

const TITLES = ["what", "largest difference found", "allowed", "values", "against"];

/** The README's lines: what is said there, and the rows it stands for; the worst of them is shown. */
const FOR_README: readonly { what: string; rows: RegExp }[] = [
  { what: "height of the sun in daylight", rows: /^sun elevation, daylight$/ },
  { what: "a cloudless day's light on the level", rows: /^clear-sky GHI, DNI, DHI of a day/ },
  {
    what: "a month's mean clearness, known from the position alone (rms)",
    rows: /^monthly clearness at a long record, rms$/,
  },
  { what: "a day's panel energy behind trees", rows: /^a day's panel energy behind trees, as sampled by default$/ },
  { what: "a day's solar energy at the bank, whole run", rows: /^end to end, .*, 10 min: daily solar energy/ },
  { what: "charge of the bank, hour by hour, whole run", rows: /^end to end, .*, 10 min: charge/ },
];

/**
 * The accuracy page: a hand-written head, then what the truth tests of the last test run measured, grouped.
 * @throws Error if the last test run left no rows, or one that failed
 */
export function validationText(folder: string = TRUTH_FOLDER): string {
  const head = readFileSync(new URL("parts/validation.md", import.meta.url), "utf8");
  const groups = groupedRows(folder);
  const reliability = reliabilityText(keptReliability());
  return [head.trimEnd(), reliability, ...groups.flatMap(([name, rows]) => [`## ${name}`, groupTable(rows)]), ""].join(
    "\n\n",
  );
}

/** The few lines for the README, as a table. @throws Error naming a line that no test measured */
export function readmeAccuracy(folder: string = TRUTH_FOLDER): string {
  const rows = groupedRows(folder).flatMap(([, each]) => each);
  const lines = FOR_README.map((line) => {
    const measured = rows.filter((row): row is TruthRow => !("skipped" in row) && line.rows.test(row.what));
    if (measured.length === 0) throw new Error(`The README wants "${line.what}", but no row matches ${line.rows}.`);
    const worst = measured.reduce((most, row) => (row.worst > most.worst ? row : most));
    const tolerance = Math.max(...measured.map((row) => row.tolerance));
    const n = measured.reduce((sum, row) => sum + row.n, 0);
    return shortCells({ ...worst, what: line.what, tolerance, n });
  });
  return mdTable(TITLES, lines);
}

/** The rows of the last test run by group; groups in the order of the computation. */
function groupedRows(folder: string): [name: string, rows: (TruthRow | SkippedRow)[]][] {
  const rows = accuracyRows(folder);
  if (rows.length === 0) throw new Error("No accuracy rows are there; run npm test first.");
  const failed = rows.find((row) => "worst" in row && row.worst > row.tolerance);
  if (failed !== undefined) throw new Error(`The last test run failed at "${failed.what}"; fix that first.`);
  const names = readdirSync(folder)
    .filter((name) => name.endsWith(".json"))
    .sort();
  const folders = [...new Set([...Object.keys(GROUPS), ...names.map((name) => name.split("-")[0]!)])];
  return folders.flatMap((prefix): [string, (TruthRow | SkippedRow)[]][] => {
    const rows = names
      .filter((name) => name.startsWith(`${prefix}-`))
      .flatMap((name) => JSON.parse(readFileSync(join(folder, name), "utf8")) as (TruthRow | SkippedRow)[]);
    return rows.length === 0 ? [] : [[GROUPS[prefix] ?? prefix, rows]];
  });
}

function groupTable(rows: readonly (TruthRow | SkippedRow)[]): string {
  const compared = rows.filter((row): row is TruthRow => !("skipped" in row));
  const leftOut = rows.filter((row): row is SkippedRow => "skipped" in row);
  return [
    mdTable(
      [...TITLES, "why so much is allowed"],
      compared.map((row) => [...shortCells(row), row.why]),
    ),
    ...leftOut.map((row) => `Not compared in this run: ${row.what}, against ${row.source} (${row.skipped}).`),
  ].join("\n\n");
}

function shortCells(row: TruthRow): string[] {
  const unit = row.unit === "" ? "" : ` ${row.unit}`;
  return [row.what, `${figure(row.worst)}${unit}`, `${figure(row.tolerance)}${unit}`, String(row.n), row.source];
}

/** Two figures are enough to judge by, and keep the last bits of a machine out of a committed page. */
function figure(value: number): string {
  return String(Number(value.toPrecision(2)));
}
