import { csvText } from "../../csvText.ts";
import type { SizePicture } from "./sizePicture.ts";

const inHundred = (share: number) => (100 * share).toFixed(2);

/** Every cell of a map with its odds and their intervals, one row each. */
export function sizeCsv({ report }: SizePicture): string {
  const { x, y, rows } = report;
  const head = [x.at, ...(y === null ? [] : [y.at])];
  head.push("holds in 100", "holds low", "holds high", "dark in 100", "dark low", "dark high", "meets the target");
  head.push("members", "cost", "mass kg");
  const cells = rows.flatMap((row) =>
    row.cells.map((cell) => [
      String(cell.x),
      ...(cell.y === null ? [] : [String(cell.y)]),
      ...[cell.holds, cell.dark].flatMap((odds) => [odds.share, odds.low, odds.high].map(inHundred)),
      cell.meets ? "yes" : "no",
      String(report.members),
      cell.cost === null ? "" : String(cell.cost),
      cell.massKg === null ? "" : String(cell.massKg),
    ]),
  );
  return csvText([head, ...cells]);
}
