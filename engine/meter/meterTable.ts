import { dsvFormat } from "d3-dsv";
import type { MeterMapping } from "./meterMapping.ts";
import { isClockOnly, isDated, isEpoch } from "./meterTime.ts";
import { isUnit } from "./meterUnits.ts";

/** A log cut into cells. */
export interface MeterTable {
  readonly delimiter: "," | ";" | "\t";
  readonly decimal: "." | ",";
  readonly titles: readonly string[];
  /** What a row of units under the titles says; empty where there is none. */
  readonly units: readonly string[];
  /** All lines of the file; data begin at `firstRow`. */
  readonly rows: readonly (readonly string[])[];
  readonly firstRow: number;
}

const DELIMITERS = ["\t", ";", ","] as const;
/** Lines before the titles, such as the meter's name, are passed over as far as this. */
const TITLES_WITHIN = 30;
const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?$/;

/**
 * Cuts a log into cells and finds its titles.
 * @returns null where no line of titles is found
 */
export function meterTable(text: string, mapping: MeterMapping): MeterTable | null {
  const delimiter = mapping.delimiter ?? delimiterOf(text);
  const rows = dsvFormat(delimiter).parseRows(text);
  const titleRow = titleRowOf(rows);
  if (titleRow < 0) return null;
  const below = rows[titleRow + 1] ?? [];
  const units = isUnitRow(below) ? below.map((cell) => bare(cell)) : [];
  const firstRow = titleRow + (units.length > 0 ? 2 : 1);
  const decimal = mapping.decimal ?? decimalOf(rows, firstRow, delimiter);
  return { delimiter, decimal, titles: distinct(rows[titleRow]!), units, rows, firstRow };
}

/** The mark that cuts the first lines into the most cells, alike from line to line. */
function delimiterOf(text: string): "," | ";" | "\t" {
  const head = text.slice(0, 20_000).split(/\r\n|\n|\r/);
  const lines = head
    .slice(0, Math.max(1, head.length - 1))
    .filter((line) => line.trim() !== "")
    .slice(0, 60);
  let best: "," | ";" | "\t" = ",";
  let most = 0;
  for (const delimiter of DELIMITERS) {
    const counts = new Map<number, number>();
    for (const row of dsvFormat(delimiter).parseRows(lines.join("\n")))
      counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
    const [width, alike] = [...counts].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0] ?? [1, 0];
    // A semicolon or a tab hardly ever stands inside a cell; a comma does, as a decimal mark.
    const score = width > 1 ? alike * (delimiter === "," ? 1 : 2) : 0;
    if (score > most) {
      most = score;
      best = delimiter;
    }
  }
  return best;
}

const isData = (cell: string) => {
  const text = cell.trim();
  return NUMBER.test(text) || isDated(text) || isClockOnly(text) || isEpoch(text);
};

/** The first line of at least two words of which none is a number or a time. */
function titleRowOf(rows: readonly (readonly string[])[]): number {
  for (let r = 0; r < Math.min(rows.length, TITLES_WITHIN); r++) {
    const cells = rows[r]!.filter((cell) => cell.trim() !== "");
    if (cells.length < 2) continue;
    if (cells.some(isData)) return -1;
    if (isUnitRow(rows[r]!)) continue;
    const below = rows.slice(r + 1, r + 6).find((row) => row.some((cell) => cell.trim() !== "") && !isUnitRow(row));
    if (below === undefined || below.some(isData)) return r;
  }
  return -1;
}

/** A cell of a row of units, out of its brackets: "[mA]". */
const bare = (cell: string) => cell.trim().replace(/^[([]\s{0,3}|\s{0,3}[)\]]$/g, "");

/** Whether a row under the titles says nothing but units; a meter leaves out those of times. */
function isUnitRow(row: readonly string[]): boolean {
  const cells = row.map(bare).filter((cell) => cell !== "");
  return cells.length > 0 && cells.filter(isUnit).length >= 0.6 * cells.length && !cells.some(isData);
}

/** The decimal mark that more of the first cells have; a comma cannot be one where it parts the cells and none is quoted. */
function decimalOf(rows: readonly (readonly string[])[], from: number, delimiter: string): "." | "," {
  let commas = 0;
  let points = 0;
  for (const row of rows.slice(from, from + 500)) {
    for (const cell of row) {
      const mark = /^[+-]?\d+([.,])\d+\s*[%A-Za-z]*$/.exec(cell.trim())?.[1];
      if (mark === ",") commas++;
      else if (mark === ".") points++;
    }
  }
  if (commas === points) return delimiter === ";" ? "," : ".";
  return commas > points ? "," : ".";
}

/** Titles as written, trimmed; a second one of the same name gets a number. */
function distinct(row: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return row.map((cell, i) => {
    const name = cell.trim() || `column ${i + 1}`;
    const times = (seen.get(name) ?? 0) + 1;
    seen.set(name, times);
    return times === 1 ? name : `${name} (${times})`;
  });
}

const NOTHING = /^(|-+|n\/?a|nan|null|none|\?)$/i;
const PLAIN = /^-?\d+(?:\.\d+)?$/;
const UNIT_AFTER = /(%|V|A|W|Ah)$/;

/** Reads a cell. @returns NaN where it is empty, null where it holds something that is no number */
export function cellNumber(cell: string, decimal: "." | ","): number | null {
  // Nearly every cell is this plain, and a long log has millions.
  if (decimal === "." && PLAIN.test(cell)) return Number(cell);
  const text = cell.trim();
  if (NOTHING.test(text)) return Number.NaN;
  let bare = text.replace(UNIT_AFTER, "").trimEnd().replace("\u2212", "-");
  if (decimal === ",") {
    if (/^[+-]?\d{1,3}(\.\d{3})+,\d+$/.test(bare)) bare = bare.replaceAll(".", "");
    if (bare.includes(".")) return null;
    bare = bare.replace(",", ".");
  } else {
    if (/^[+-]?\d{1,3}(,\d{3})+\.\d+$/.test(bare)) bare = bare.replaceAll(",", "");
    if (bare.includes(",")) return null;
  }
  return NUMBER.test(bare) ? Number(bare) : null;
}
