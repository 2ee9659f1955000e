import type { Notebook } from "../../engine/notebook/notebook.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { makeTheme } from "../parts/makeTheme.ts";
import { UnitsChoice } from "../parts/UnitsChoice.tsx";
import { notebookOf } from "../start/notebookOf.ts";
import { StartQuestions } from "../start/StartQuestions.tsx";
import type { NotebookStore } from "../store/notebookStore.ts";

/** Six questions that end in a notebook with a verdict. */
export function NewNotebook(props: {
  store: NotebookStore | null;
  /** What becomes of the notebook where the browser keeps none. */
  onUnkept: (notebook: Notebook) => void;
}) {
  makeTheme();
  const done = async (document: ScenarioInput) => {
    const { store } = props;
    const kept = async () => {
      if (store === null) return false;
      const { id } = await store.create(notebookOf(document, freeId(document.name, [])), Date.now());
      location.search = `?notebook=${id}`;
      return true;
    };
    // A store that is full is as good as none: the answers must not be lost.
    if (!(await kept().catch(() => false))) props.onUnkept(notebookOf(document, freeId(document.name, [])));
  };
  return (
    <div class="page page-shelf">
      <main class="sheet">
        <div class="answer-block">
          <h1 class="answer">A new notebook</h1>
          <p class="more">
            <a href="?shelf">Back to the shelf</a>
          </p>
          <p class="more">
            <UnitsChoice />
          </p>
        </div>
        <div class="margin-left">
          <StartQuestions onDone={(document) => void done(document)} />
        </div>
      </main>
    </div>
  );
}
