import { Show } from "solid-js";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { fileName, saveFile } from "../download/saveFile.ts";
import { notebookText } from "../notebook/notebookText.ts";
import type { NotebookStore } from "../store/notebookStore.ts";

/** Stands in the place of a sheet that cannot be shown. */
export function SheetFailed(props: {
  error: unknown;
  /** The notebook as it was opened; null where it never was. */
  notebook: Notebook | null;
  store: NotebookStore | null;
}) {
  // What is kept is newer than what was opened.
  const save = async (notebook: Notebook) => {
    const kept = await props.store?.raw(notebook.id).catch(() => null);
    saveFile(`${fileName(notebook.title)}.json`, "application/json", notebookText(kept?.notebook ?? notebook));
  };
  return (
    <div class="page page-shelf">
      <main class="sheet">
        <div class="answer-block" role="alert">
          <h1 class="answer">This page cannot be shown.</h1>
          <p class="more">
            What went wrong: {props.error instanceof Error ? props.error.message : String(props.error)}. What is kept in
            this browser is not touched by it.
          </p>
        </div>
        <p class="margin-left acts-row">
          <Show when={props.notebook}>
            {(notebook) => (
              <button type="button" class="act" onClick={() => void save(notebook())}>
                Save the notebook as a file
              </button>
            )}
          </Show>
          <button type="button" class="act" onClick={() => location.reload()}>
            Load the page again
          </button>
          <a class="act" href="?shelf">
            To the shelf
          </a>
        </p>
      </main>
    </div>
  );
}
