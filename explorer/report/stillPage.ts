import type { ScenarioInput } from "../../engine/index.ts";
import type { Asked } from "../notebook/asked.ts";
import type { Notebook } from "../notebook/notebook.ts";
import type { Found } from "../notebook/notebookPage.ts";
import { scenarioDocument, scenarioIn } from "../notebook/scenarioDocument.ts";
import type { Answer } from "../results/desk.ts";
import type { ReportPage } from "./reportPage.ts";

/** What was worked out, by what was asked. */
export type Answers = ReadonlyMap<string, Answer>;

/** The name of something asked among answers. */
export function answerKey(asked: Asked): string {
  switch (asked.kind) {
    case "versus":
      return `versus ${asked.first} ${asked.second}`;
    case "sizes":
    case "limits":
    case "learned":
    case "actual":
      return `${asked.kind} ${asked.scenario} ${JSON.stringify(asked.doc)}`;
    default:
      return `${asked.kind} ${asked.scenario}`;
  }
}

/** A notebook and its results when nothing moves any more. */
export function stillPage(notebook: Notebook, answers: Answers): ReportPage {
  const documentOf = (id: string): ScenarioInput | null => {
    const found = scenarioDocument(notebook, id);
    return found.ok ? found.document : null;
  };
  const find = <Kind extends Asked["kind"]>(_: Kind, asked: Asked) => {
    const ids = asked.kind === "versus" ? [asked.first, asked.second] : [asked.scenario];
    type Result = Extract<Answer, { kind: Kind }> extends { picture: infer Picture } ? Picture : never;
    const lost = ids.map((id) => scenarioDocument(notebook, id)).find((each) => !each.ok);
    const answer = answers.get(answerKey(asked));
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
    run: (scenario) => find("run", { kind: "run", scenario }),
    odds: (scenario) => find("odds", { kind: "odds", scenario }),
    versus: (first, second) => find("versus", { kind: "versus", first, second }),
    sizes: (doc) => find("sizes", { kind: "sizes", scenario: doc.scenario, doc }),
    limits: (doc) => find("limits", { kind: "limits", scenario: doc.scenario, doc }),
    learned: (doc) => find("learned", { kind: "learned", scenario: doc.scenario, doc }),
    actual: (doc) => find("actual", { kind: "actual", scenario: doc.scenario, doc }),
    drivers: (scenario) => find("drivers", { kind: "drivers", scenario }),
  };
}
