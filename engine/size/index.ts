/**
 * size: the odds over one or two numbers of a scenario, all cells under the same members.
 */
export { readSizeWish, type SizeAxis, type SizeWish, usualWishes } from "./sizeAxis.ts";
export { sizeFixedWords } from "./sizeFixedWords.ts";
export type { SizeHandbook } from "./sizeHandbook.ts";
export { prepareSizes, type SizeMap } from "./sizeMap.ts";
export { mergeSizes, type SizePart, sizeMembers } from "./sizeMembers.ts";
export { type SizeReport, sizeReport } from "./sizeReport.ts";
export { type SizeOption, sizeCellWords, sizeOptions, sizeWords } from "./sizeSentences.ts";
export { isSize, missesByLoads, type SizeAims, type SizeOutcome, type SizeRow } from "./sizeTally.ts";
