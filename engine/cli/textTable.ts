import { type Column, plain } from "../answers/column.ts";

/** Heads wider than this stand in several lines, where their cells need no more room. */
const WIDEST_HEAD = 12;

/**
 * Lays rows out under their heads, columns two spaces apart; plain text for a terminal.
 * @param widestHead characters; a table of many columns takes fewer
 */
export function textTable<Row>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
  widestHead = WIDEST_HEAD,
): string {
  const cells = rows.map((row) => columns.map((column) => plain(column.cell(row))));
  const heads = columns.map(({ head }, c) =>
    headLines(plain(head), Math.max(widestHead, ...cells.map((line) => line[c]!.length))),
  );
  const widths = columns.map((_, c) =>
    Math.max(...[...heads[c]!, ...cells.map((line) => line[c]!)].map(({ length }) => length)),
  );
  const inLine = (line: readonly string[]) =>
    line
      .map((cell, c) => (columns[c]!.isWords ? cell.padEnd(widths[c]!) : cell.padStart(widths[c]!)))
      .join("  ")
      .trimEnd();
  const height = Math.max(...heads.map(({ length }) => length));
  // Heads of fewer lines stand low, on the rule.
  const headRows = Array.from({ length: height }, (_, h) =>
    heads.map((lines) => lines[h - height + lines.length] ?? ""),
  );
  return [...headRows.map(inLine), widths.map((width) => "-".repeat(width)).join("  "), ...cells.map(inLine)].join(
    "\n",
  );
}

/** A head in lines of at most `width` characters, where its words allow. */
function headLines(head: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of head.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
