/**
 * report: the report as the page saves and prints it; it is made by engine/report.
 */
export { PrintEnd } from "./PrintEnd.tsx";
export { saveReport } from "./saveReport.ts";
