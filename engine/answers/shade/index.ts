/** answers/shade: what stands about, and when it takes the sun from the panels. What other folders may take of it. */
export { shadeKind } from "./kind.ts";
export { SHADE_HEADS, shadeRows } from "./shadeRows.ts";
export { shadeVerdict } from "./shadeWords.ts";
export { sunCsv } from "./sunCsv.ts";
export { sunDrawing } from "./sunDrawing.ts";
export { DARK, OPEN, sunKind } from "./sunKind.ts";
export { type Sunlight, sunlight } from "./sunlight.ts";
