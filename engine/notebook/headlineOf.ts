import type { AnswersPage } from "../answers/answersPage.ts";
import type { Headline } from "../answers/kind.ts";
import { kindOf } from "../answers/kinds.ts";
import type { Notebook } from "./notebook.ts";

/** The sentence that heads a notebook, from the first entry that has one; null when none has. */
export function headlineOf(page: AnswersPage, notebook: Notebook): Headline | null {
  for (const { kind, doc } of notebook.entries) {
    const { headline } = kindOf(kind);
    if (headline !== undefined) return headline(page, doc);
  }
  return null;
}
