import type { Asked } from "../answers/asked.ts";
import type { Found, ScenarioProblem } from "../answers/found.ts";
import { kindOf } from "../answers/kinds.ts";
import { lookOf } from "../notebook/looks.ts";
import type { Notebook } from "../notebook/notebook.ts";
import { scenarioDocument, scenarioIn, scenariosIn } from "../notebook/scenarioDocument.ts";
import type { ReportPage } from "./reportPage.ts";

/** What came of something asked: its picture, or what is wrong. */
export type Answered =
  | { readonly ok: true; readonly picture: unknown }
  | { readonly ok: false; readonly problems: readonly ScenarioProblem[] };

/** What was worked out, by what was asked. */
export type Answers = ReadonlyMap<string, Answered>;

/** The name of something asked among answers. */
export const answerKey = ({ kind, doc }: Asked): string => JSON.stringify([kind, doc]);

/** A notebook and its results when nothing moves any more. */
export function stillPage(notebook: Notebook, answers: Answers): ReportPage {
  const documentOf = (id: string) => {
    const found = scenarioDocument(notebook, id);
    return found.ok ? found.document : null;
  };
  function find<Picture>(asked: Asked<Picture>): Found<Picture> {
    const ids = kindOf(asked.kind).scenarios(asked.doc);
    const lost = ids.map((id) => scenarioDocument(notebook, id)).find((each) => !each.ok);
    const answer = answers.get(answerKey(asked));
    const problems =
      lost !== undefined && !lost.ok
        ? [{ code: "no-document", path: [], message: lost.sentence }]
        : answer?.ok === false
          ? answer.problems
          : [];
    const result = answer?.ok ? (answer.picture as Picture) : null;
    return { result, stale: result === null, progress: null, problems };
  }
  return {
    notebook: () => notebook,
    drawn: () => notebook,
    scenarios: () => scenariosIn(notebook),
    scenario: (id) => scenarioIn(notebook, id),
    look: (id) => lookOf(notebook, id),
    document: documentOf,
    baseDocument: (id) => {
      const scenario = scenarioIn(notebook, id);
      return scenario !== null && "basedOn" in scenario ? documentOf(scenario.basedOn) : null;
    },
    find,
  };
}
