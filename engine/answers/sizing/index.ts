/** answers/sizing: how big a bank, how much panel: the odds over two numbers. What other folders may take of it. */
export { sizesOf } from "./ask.ts";
export { SizingDoc } from "./doc.ts";
export { sizingKind } from "./kind.ts";
export { mapStations } from "./mapStations.ts";
export { sizeCsv } from "./sizeCsv.ts";
export { type SizeDrawing, sizeDrawing } from "./sizeDrawing.ts";
export { sizeFields, valuesAbout } from "./sizeFields.ts";
export { nearest } from "./sizeLayout.ts";
export type { SizePicture } from "./sizePicture.ts";
export { type AxisWords, axisWords, cellChanges, presentCell, readCell, typedValues } from "./sizingWords.ts";
export { workMap } from "./work.ts";
