/**
 * One column of a table: its head and its cells stand here once, whatever the table is made into (page, report, CSV, print).
 * Each maker takes the columns that it has room for.
 */
export interface Column<Row> {
  readonly head: string;
  /** As it is read. */
  readonly cell: (row: Row) => string;
  /** As a spreadsheet takes it, unrounded and without unit; two cells are a value and its ±. Left out: as it is read. */
  readonly raw?: (row: Row) => string | readonly [string, string];
  /** Words stand left in print, figures right. */
  readonly isWords?: boolean;
  /** Whether `raw` gives a ± as well. */
  readonly hasPlusMinus?: boolean;
}

/** Heads and rows for a file that a spreadsheet opens. */
export function csvRowsOf<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string[][] {
  return [
    columns.flatMap(({ head, hasPlusMinus }) => (hasPlusMinus ? [head, "±"] : [head])),
    ...rows.map((row) => columns.flatMap(({ cell, raw }) => raw?.(row) ?? plain(cell(row)))),
  ];
}

/** What print sets narrow, as everybody's programs read it: figures without a gap, a space before a unit. */
export const plain = (text: string) => text.replace(/(?<=\d)\u202f(?=\d{3})/g, "").replaceAll("\u202f", " ");
