import type { AnswersPage } from "../answers/answersPage.ts";
import type { Notebook } from "../notebook/notebook.ts";

/** What a report is made from: a notebook and what was worked out for it. The page has it, and so has `stillPage`. */
export interface ReportPage extends AnswersPage {
  notebook(): Notebook;
}
