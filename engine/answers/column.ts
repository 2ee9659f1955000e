/**
 * One column of a table: its head and its cells stand here once, whatever the table is made into (page, report, CSV, print).
 * Each maker takes the columns that it has room for.
 */
export interface Column<Row> {
  readonly head: string;
  /** As it is read. */
  readonly cell: (row: Row) => string;
  /** Words stand left in print, figures right. */
  readonly isWords?: boolean;
}

/** What print sets narrow, as everybody's programs read it. */
export const plain = (text: string) => text.replaceAll("\u202f", " ");
