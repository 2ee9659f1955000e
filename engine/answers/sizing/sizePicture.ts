import { sizeFixedWords } from "../../size/sizeFixedWords.ts";
import type { SizeMap } from "../../size/sizeMap.ts";
import type { SizeReport } from "../../size/sizeReport.ts";
import { type SizeOption, sizeCellWords, sizeOptions } from "../../size/sizeSentences.ts";

/** A map of the odds over two numbers, in figures and in words. */
export interface SizePicture {
  readonly report: SizeReport;
  /** Each cell in words, row by row. */
  readonly cellWords: readonly (readonly string[])[];
  /** The answer; the cells that it names, numbered on the map; and what else there is to say. */
  readonly answer: string;
  readonly options: readonly SizeOption[];
  readonly more: readonly string[];
  /** What a bigger bank or more panels would change and the map leaves as stated, in sentences. */
  readonly fixed: readonly string[];
  readonly remarks: readonly string[];
}

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
