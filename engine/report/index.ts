/**
 * report: a notebook, worked out, as one HTML file that needs no script and no network.
 */
export { reportHtml } from "./reportHtml.ts";
export { type ReportMade, type ReportWorks, reportOfText } from "./reportOfText.ts";
export { stillPage } from "./stillPage.ts";
