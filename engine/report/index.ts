/**
 * report: a notebook, worked out, as one HTML file that needs no script and no network.
 */

export { drawingRules } from "./drawingRules.ts";
export { reportHtml } from "./reportHtml.ts";
export { reportOfText } from "./reportOfText.ts";
export type { ReportPage } from "./reportPage.ts";
export { type Tells, tellsOf } from "./tellsOf.ts";
export { traceSvg } from "./traceSvg.ts";
