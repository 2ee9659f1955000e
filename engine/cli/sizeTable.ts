import { inHundred, sampleRange } from "../odds/wilson.ts";
import type { SizeReport } from "../size/sizeReport.ts";
import { missesByLoads, type SizeOutcome } from "../size/sizeTally.ts";

/** Columns up to which the interval stands beside each figure; more would not fit on a terminal. */
const MOST_WITH_INTERVAL = 8;

/** Box characters by the lines that meet: up 1, down 2, left 4, right 8. */
const JUNCTIONS = " ╵╷│╴┘┐┤╶└┌├─┴┬┼";

/**
 * The map as a table, members that hold in 100, with a stair between the cells that meet the target and those that do not.
 * @param labels what stands before each row, one or more columns of text
 */
export function sizeTable(
  report: SizeReport,
  labels: readonly (readonly string[])[],
  titles: readonly string[],
): string {
  const { rows, x } = report;
  const hasInterval = x.values.length <= MOST_WITH_INTERVAL;
  const texts = rows.map((row) => row.cells.map((cell) => cellText(cell, report, hasInterval)));
  const heads = x.values.map((value) => String(value));
  const width = Math.max(...heads.map((head) => head.length), ...texts.flat().map((text) => text.length));
  const labelWidths = titles.map((title, k) => Math.max(title.length, ...labels.map((label) => label[k]!.length)));
  const label = (cells: readonly string[]) => cells.map((cell, k) => cell.padStart(labelWidths[k]!)).join("  ");
  const meets = (r: number, c: number) => rows[r]?.cells[c]?.meets ?? false;
  const bar = (r: number, c: number) => meets(r, c) !== (c > 0 && meets(r, c - 1));
  const step = (r: number, c: number) => r > 0 && r < rows.length && meets(r, c) !== meets(r - 1, c);
  const lines = [`${label(titles)}  ${heads.map((head) => ` ${head.padStart(width)} `).join(" ")}`.trimEnd()];
  lines.push(
    labelWidths.map((wide) => "-".repeat(wide)).join("  ") +
      `  ${heads.map(() => ` ${"-".repeat(width)} `).join(" ")}`.trimEnd(),
  );
  rows.forEach((_, r) => {
    if (x.values.some((_value, c) => step(r, c))) lines.push(stairLine(r));
    const cells = texts[r]!.map((text, c) => `${bar(r, c) ? "│" : " "} ${text.padStart(width)} `).join("");
    lines.push(`${label(labels[r]!)} ${cells}`.trimEnd());
  });
  return lines.join("\n");

  function stairLine(r: number): string {
    const parts = x.values.map((_, c) => {
      const joint =
        (bar(r - 1, c) ? 1 : 0) + (bar(r, c) ? 2 : 0) + (c > 0 && step(r, c - 1) ? 4 : 0) + (step(r, c) ? 8 : 0);
      return JUNCTIONS[joint]! + (step(r, c) ? "─" : " ").repeat(width + 2);
    });
    return `${" ".repeat(label(titles).length)} ${parts.join("")}`.trimEnd();
  }
}

function cellText(cell: SizeOutcome, { targetShare }: SizeReport, hasInterval: boolean): string {
  const short = inHundred(cell.holds.share).replace("more than ", ">").replace("fewer than ", "<");
  const interval = hasInterval ? ` (${sampleRange(cell.holds)})` : "";
  const isDark = missesByLoads(cell, targetShare);
  const mark = isDark ? "*" : cell.isOpen && targetShare < 1 ? "~" : " ";
  return `${short}${interval}${mark}`;
}
