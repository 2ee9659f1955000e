import { type SizeMap, type SizeReport, sizeCellWords, sizeFixedWords, sizeOptions } from "../../engine/index.ts";
import type { SizePicture } from "./answers.ts";

/** Takes from a map what the page shows. */
export function sizePicture(map: SizeMap, report: SizeReport): SizePicture {
  const options = sizeOptions(report, map);
  const named = new Set(options.map(({ sentence }) => sentence));
  const [answer, ...others] = report.sentences;
  return {
    report,
    cellWords: report.rows.map((row) => row.cells.map((cell) => sizeCellWords(map, cell))),
    answer: answer!,
    options,
    more: others.filter((sentence) => !named.has(sentence)),
    fixed: sizeFixedWords(map),
    remarks: map.remarks,
  };
}
