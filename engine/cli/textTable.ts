/** One column of a printed table. */
export interface Column<Row> {
  readonly title: string;
  readonly cell: (row: Row) => string;
  /** Words stand left, figures right. */
  readonly align?: "left" | "right";
}

/** Lays rows out under their titles, columns two spaces apart; plain text for a terminal. */
export function textTable<Row>(rows: readonly Row[], columns: readonly Column<Row>[]): string {
  const cells = [
    columns.map((column) => column.title),
    ...rows.map((row) => columns.map((column) => column.cell(row))),
  ];
  const widths = columns.map((_, c) => Math.max(...cells.map((line) => line[c]!.length)));
  const lines = cells.map((line) =>
    line
      .map((cell, c) => (columns[c]!.align === "left" ? cell.padEnd(widths[c]!) : cell.padStart(widths[c]!)))
      .join("  ")
      .trimEnd(),
  );
  lines.splice(1, 0, widths.map((width) => "-".repeat(width)).join("  "));
  return lines.join("\n");
}
