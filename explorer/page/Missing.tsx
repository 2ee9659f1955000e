import { For, Show } from "solid-js";
import { saveFile } from "../download/saveFile.ts";
import { notebookText } from "../notebook/notebookText.ts";
import type { NotebookStore } from "../store/notebookStore.ts";

/** What of a notebook could not be read, and what becomes of the notebook as it lies on the shelf. */
export interface ReadPartly {
  /** The id that the notebook itself has on the shelf. */
  readonly id: string;
  readonly missing: readonly string[];
}

const MOST_SHOWN = 20;

/** Stands over a sheet that shows what could be read of a notebook: what is missing, and that nothing of it is overwritten. */
export function Missing(props: { of: ReadPartly; store: NotebookStore | null }) {
  const save = async () => {
    const kept = await props.store?.raw(props.of.id);
    if (kept) saveFile(`${props.of.id}.json`, "application/json", notebookText(kept.notebook));
  };
  return (
    <div class="margin-left no-print" role="alert">
      <p class="wrong">
        Not all of this notebook can be read. It stays on the shelf as it is; a change here makes a copy.
      </p>
      <ul class="lines">
        <For each={props.of.missing.slice(0, MOST_SHOWN)}>{(sentence) => <li>{sentence}</li>}</For>
        <Show when={props.of.missing.length > MOST_SHOWN}>
          <li>and {props.of.missing.length - MOST_SHOWN} more</li>
        </Show>
      </ul>
      <p class="acts-row">
        <button type="button" class="act" onClick={() => void save()}>
          Save the notebook as it lies there
        </button>
      </p>
    </div>
  );
}
