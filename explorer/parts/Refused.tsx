import { For, Show } from "solid-js";
import { saveFile } from "../download/saveFile.ts";
import { notebookText } from "../notebook/notebookText.ts";
import type { NotebookStore } from "../store/notebookStore.ts";
import { makeTheme } from "./makeTheme.ts";

/** A notebook that cannot be shown, and why; it stays on the shelf as it is, and goes out as a file from there. */
export function Refused(props: { sentences: readonly string[]; id?: string | null; store?: NotebookStore | null }) {
  makeTheme();
  const save = async (id: string) => {
    const kept = await props.store?.raw(id);
    if (kept) saveFile(`${id}.json`, "application/json", notebookText(kept.notebook));
  };
  return (
    <div class="page page-shelf">
      <main class="sheet">
        <div class="answer-block">
          <h1 class="answer">This notebook is not opened.</h1>
          <For each={props.sentences}>{(sentence) => <p class="more">{sentence}</p>}</For>
          <p class="more">
            It was left as it is. <a href="?shelf">To the shelf</a>
          </p>
          <Show when={props.id}>
            {(id) => (
              <p class="more">
                <button type="button" class="act" onClick={() => void save(id())}>
                  Save it as a file
                </button>
              </p>
            )}
          </Show>
        </div>
      </main>
    </div>
  );
}
