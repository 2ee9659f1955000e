/** answers/shade: what stands about, and when it takes the sun from the panels. What other folders may take of it. */

export { spotsOf } from "./ask.ts";
export { boxFootprint, type PlanPoint } from "./boxFootprint.ts";
export { headingDrawing } from "./headingDrawing.ts";
export { shadeKind } from "./kind.ts";
export { SHADE_HEADS, shadeRows } from "./shadeRows.ts";
export { shadeVerdict } from "./shadeWords.ts";
export { type SpotsDrawing, spotsDrawing } from "./spotsDrawing.ts";
export type { SpotsPicture } from "./spotsPicture.ts";
export { SPOT, spotRows, spotsCsv } from "./spotsRows.ts";
export { leadWords, lossWords, ofWhichSky, spanWords, spotsSentence, wayWords, whWords } from "./spotsWords.ts";
export { sunCsv } from "./sunCsv.ts";
export { sunDrawing } from "./sunDrawing.ts";
export { DARK, OPEN, sunKind } from "./sunKind.ts";
export { type Sunlight, sunlight } from "./sunlight.ts";
