import { type SizeMap, type SizeReport, sizeFixedWords, sizeWords } from "../../engine/index.ts";
import type { SizePicture } from "./answers.ts";

/** Takes from a map what the page shows. */
export function sizePicture(map: SizeMap, report: SizeReport): SizePicture {
  const { scenario } = map.base;
  const words = (axis: SizeReport["x"]) => axis.values.map((value) => sizeWords(axis, value, scenario));
  return {
    report,
    xWords: words(report.x),
    yWords: report.y === null ? [] : words(report.y),
    fixed: sizeFixedWords(map),
    remarks: map.remarks,
  };
}
