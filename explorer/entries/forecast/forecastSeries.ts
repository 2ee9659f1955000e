import type { EntryDoc } from "../../notebook/notebook.ts";
import type { NotebookPage } from "../../notebook/notebookPage.ts";
import type { Series } from "./forecastLayout.ts";

const LOOKS = ["first", "second", "third", "fourth"] as const;

/** What is known of each of a forecast's scenarios. */
export function forecastSeries(page: Pick<NotebookPage, "odds" | "scenario">, doc: EntryDoc<"forecast">): Series[] {
  return doc.scenarios.flatMap((id, k) => {
    const { result } = page.odds(id);
    const name = page.scenario(id)?.name;
    return result === null || name === undefined ? [] : [{ id, name, look: LOOKS[k]!, picture: result }];
  });
}
