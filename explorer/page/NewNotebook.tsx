import type { ScenarioInput } from "../../engine/index.ts";
import { freeId } from "../notebook/notebookEdits.ts";
import { notebookOf } from "../notebook/notebookOf.ts";
import { StartQuestions } from "../start/StartQuestions.tsx";
import type { NotebookStore } from "../store/notebookStore.ts";
import { makeTheme } from "./makeTheme.ts";
import { UnitsChoice } from "./UnitsChoice.tsx";

/** Six questions that end in a notebook with a verdict. */
export function NewNotebook(props: { store: NotebookStore }) {
  makeTheme();
  const done = async (document: ScenarioInput) => {
    const id = freeId(document.name, await props.store.list());
    await props.store.save(notebookOf(document, id), 0, Date.now());
    location.search = `?notebook=${id}`;
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
