/** A table in Markdown; a bar inside a cell is escaped, so that it ends nothing. */
export function mdTable(titles: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  return [line(titles), line(titles.map(() => "---")), ...rows.map(line)].join("\n");
}
