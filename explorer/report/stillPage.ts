import type { ScenarioInput } from "../../engine/index.ts";
import type { Notebook } from "../notebook/notebook.ts";
import type { Found } from "../notebook/notebookPage.ts";
import { scenarioDocument, scenarioIn } from "../notebook/scenarioDocument.ts";
import type { Answer } from "../results/desk.ts";
import type { ReportPage } from "./reportPage.ts";

/** What was worked out, by kind and scenarios: "odds meadow", "versus roof meadow". */
export type Answers = ReadonlyMap<string, Answer>;

/** A notebook and its results when nothing moves any more. */
export function stillPage(notebook: Notebook, answers: Answers): ReportPage {
  const documentOf = (id: string): ScenarioInput | null => {
    const found = scenarioDocument(notebook, id);
    return found.ok ? found.document : null;
  };
  const find = <Kind extends Answer["kind"]>(kind: Kind, ids: readonly string[]) => {
    type Result = Extract<Answer, { kind: Kind }> extends { picture: infer Picture } ? Picture : never;
    const lost = ids.map((id) => scenarioDocument(notebook, id)).find((each) => !each.ok);
    const answer = answers.get([kind, ...ids].join(" "));
    const problems =
      lost !== undefined && !lost.ok
        ? [{ code: "no-document", path: [], message: lost.sentence }]
        : answer?.kind === "problems"
          ? answer.problems
          : [];
    const result = answer !== undefined && "picture" in answer ? (answer.picture as Result) : null;
    return { result, stale: result === null, progress: null, problems } satisfies Found<Result>;
  };
  return {
    notebook: () => notebook,
    scenario: (id) => scenarioIn(notebook, id),
    document: documentOf,
    baseDocument: (id) => {
      const scenario = scenarioIn(notebook, id);
      return scenario !== null && "basedOn" in scenario ? documentOf(scenario.basedOn) : null;
    },
    run: (id) => find("run", [id]),
    odds: (id) => find("odds", [id]),
    versus: (first, second) => find("versus", [first, second]),
  };
}
