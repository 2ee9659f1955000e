import { csvFormatRows } from "d3-dsv";

/** What a spreadsheet may take for the start of a formula; full-width signs too, which some fold into plain ones. */
const FORMULA_START = /^[=+\-\u2212@\t\r＝＋－＠]/;
const NUMBER = /^[+\-\u2212]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?$/i;

/**
 * Rows as CSV in which no name can become a formula where a spreadsheet opens it: such a cell gets an apostrophe in front. Numbers stay
 * numbers, negative ones too.
 * @see OWASP, CSV Injection (https://owasp.org/www-community/attacks/CSV_Injection; from memory)
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return csvFormatRows(
    rows.map((row) => row.map((cell) => (FORMULA_START.test(cell) && !NUMBER.test(cell) ? `'${cell}` : cell))),
  );
}
