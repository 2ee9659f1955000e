/**
 * size: the odds over one or two numbers of a scenario, all cells under the same members.
 */
export { readSizeWish, type SizeAxis, type SizeWish, wishesOf } from "./sizeAxis.ts";
export { sizeFixedWords } from "./sizeFixedWords.ts";
export { prepareSizes, type SizeMap } from "./sizeMap.ts";
export type { SizePart } from "./sizeMembers.ts";
export { type RunMap, type SizeReport, solvedSizes } from "./sizeReport.ts";
export { type SizeOption, sizeCellWords, sizeOptions } from "./sizeSentences.ts";
export { type SizesTask, sizesTask } from "./sizesTask.ts";
export { isSize, missesByLoads, type SizeAims, type SizeOutcome, type SizeRow } from "./sizeTally.ts";
export { allCells } from "./solvedTally.ts";
