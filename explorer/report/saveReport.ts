import type { ReportPage } from "../../engine/report/reportPage.ts";
import { fileName, saveFile } from "../download/saveFile.ts";

/** Hands the notebook over as one HTML file, the same that the command line writes. */
export async function saveReport(page: ReportPage): Promise<void> {
  const { reportHtml } = await import("../../engine/report/reportHtml.ts");
  saveFile(`${fileName(page.notebook().title)}.html`, "text/html", await reportHtml(page));
}
