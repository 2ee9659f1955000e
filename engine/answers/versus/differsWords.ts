import type { changesInWords } from "../../fields/changesInWords.ts";
import type { AnswersPage } from "../answersPage.ts";
import type { VersusDoc } from "./ask.ts";

/**
 * What each scenario of a table changes against the first, in words; null for the first. By place.
 * @param inWords the page has them later than the table
 */
export function differsLines(
  page: Pick<AnswersPage, "document">,
  { scenarios: [first, ...others] }: VersusDoc,
  inWords: typeof changesInWords,
): (readonly string[] | null)[] {
  const from = page.document(first!);
  return [
    null,
    ...others.map((id) => {
      const to = page.document(id);
      return from === null || to === null ? [] : inWords([], from, to);
    }),
  ];
}
