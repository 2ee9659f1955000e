import { wiringDrawing } from "../answers/limits/wiringDrawing.ts";
import type { LimitsReport } from "../checks/limits.ts";
import { svgDocument } from "../drawing/svgDocument.ts";
import { drawingRules } from "./drawingRules.ts";

/** A plan's wiring as a file that stands alone: the diagram that the page shows, and every run. */
export function wiringSvg(report: LimitsReport): string {
  return svgDocument(wiringDrawing(report), drawingRules);
}
