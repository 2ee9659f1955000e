import { changesInWords } from "../../fields/changesInWords.ts";
import { type AnswersPage, nameOf } from "../answersPage.ts";

/** The name of what a scenario is based on and the changes in words; null for one with a document of its own. */
export function changesOf(
  page: AnswersPage,
  id: string,
): { readonly base: string; readonly lines: readonly string[] } | null {
  const scenario = page.scenario(id);
  if (scenario === null || "document" in scenario) return null;
  const [from, to] = [page.baseDocument(id), page.document(id)];
  return {
    base: nameOf(page, scenario.basedOn),
    lines: from === null || to === null ? [] : changesInWords(scenario.changes, from, to),
  };
}
