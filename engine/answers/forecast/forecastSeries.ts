import type { AnswersPage } from "../answersPage.ts";
import { oddsOf } from "./ask.ts";
import type { Series } from "./forecastLayout.ts";

/** What is known of each of a forecast's scenarios. */
export function forecastSeries(
  page: Pick<AnswersPage, "find" | "look" | "scenario">,
  doc: { readonly scenarios: readonly string[] },
): Series[] {
  return doc.scenarios.flatMap((id) => {
    const { result } = oddsOf(page, id);
    const name = page.scenario(id)?.name;
    return result === null || name === undefined ? [] : [{ id, name, look: page.look(id), picture: result }];
  });
}
