import type { NotebookPage } from "../notebook/notebookPage.ts";

/** What a report is made from: a notebook and what was worked out for it. The page has it, and so has `stillPage`. */
export type ReportPage = Pick<
  NotebookPage,
  | "notebook"
  | "scenario"
  | "document"
  | "baseDocument"
  | "run"
  | "odds"
  | "versus"
  | "sizes"
  | "drivers"
  | "limits"
  | "learned"
  | "actual"
>;
