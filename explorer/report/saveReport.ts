import { fileName, saveFile } from "../download/saveFile.ts";
import type { Entry } from "../notebook/notebook.ts";
import type { ReportPage } from "./reportPage.ts";

/** Hands the notebook over as one HTML file, the same that the command line writes. */
export async function saveReport(page: ReportPage, lineOf: (entry: Entry) => string): Promise<void> {
  const { reportHtml } = await import("./reportHtml.ts");
  saveFile(`${fileName(page.notebook().title)}.html`, "text/html", reportHtml(page, lineOf));
}
