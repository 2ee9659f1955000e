import { createComputed, createMemo } from "solid-js";
import type { Asked } from "../../engine/answers/asked.ts";
import type { Found } from "../../engine/answers/found.ts";
import { kindOf } from "../../engine/answers/kinds.ts";
import { placeOf, wantOf } from "../../engine/answers/wantOf.ts";
import { askedByAll } from "../../engine/notebook/asked.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { type ScenarioDocument, scenarioDocument } from "../../engine/notebook/scenarioDocument.ts";
import type { NotebookState } from "../notebook/makeNotebook.ts";
import type { Results } from "../results/makeResults.ts";

type Documents = ReadonlyMap<string, ScenarioDocument>;

function documentsOf(notebook: Notebook): Documents {
  return new Map(notebook.scenarios.map(({ id }) => [id, scenarioDocument(notebook, id)]));
}

const documentIn = (all: Documents) => (id: string) => {
  const found = all.get(id);
  return found?.ok ? found.document : null;
};

/** What the notebook asks, put to its results under the scenarios' documents as they are now, and as they were before the last edit.
 * @param also what is asked beside the notebook's own questions
 */
export function makeFinds(state: NotebookState, results: Results, also: () => readonly Asked[]) {
  const documents = createMemo(() => documentsOf(state.now()));
  const documentsBefore = createMemo(() => {
    const before = state.before();
    return before === null ? null : documentsOf(before);
  });
  const keys = createMemo(() => {
    documents();
    state.now();
    return new Map<string, string | null>();
  });
  /** A key is long to write and read at every news: once for each edit. */
  const keyOnce = (name: string, write: () => string | null): string | null => {
    const known = keys();
    const key = known.has(name) ? known.get(name)! : write();
    known.set(name, key);
    return key;
  };
  const wantNow = (asked: Asked) => wantOf(asked, documentIn(documents()), state.now());
  const keyNow = (asked: Asked) => keyOnce(JSON.stringify(asked), () => wantNow(asked)?.key ?? null);

  // Before anything is drawn: the desk works while the page does.
  createComputed(() => {
    const wants = [...askedByAll(state.now()), ...also()].flatMap((asked) => wantNow(asked) ?? []);
    results.want(wants);
  });

  /** Adds what is wrong with the document itself, where it cannot even be put together. */
  const withDocuments = <Result>(ids: readonly string[], found: Found<Result>): Found<Result> => {
    for (const id of ids) {
      const document = documents().get(id);
      if (document?.ok) continue;
      const message = document?.sentence ?? `There is no scenario ${id} in this notebook.`;
      return { ...found, progress: null, problems: [{ code: "no-document", path: [], message }] };
    }
    return found;
  };

  return {
    document: (id: string) => documentIn(documents())(id),
    find: <Picture>(asked: Asked<Picture>): Found<Picture> =>
      withDocuments(kindOf(asked.kind).scenarios(asked.doc), results.find(placeOf(asked), keyNow(asked))),
    before: <Picture>(asked: Asked<Picture>): Picture | null => {
      const all = documentsBefore();
      const key = all === null ? null : (wantOf(asked, documentIn(all), state.now())?.key ?? null);
      return key === null || key === keyNow(asked) ? null : results.known<Picture>(key);
    },
  };
}
