import { createEffect, createSignal, onCleanup } from "solid-js";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { fileName, saveFile } from "../download/saveFile.ts";
import { notebookText } from "../notebook/notebookText.ts";
import type { KeeperState } from "../store/makeKeeper.ts";

/**
 * Has the browser ask before a page is left on which something would be lost: a change that is still being saved, or one that could not be
 * kept and is in no file either. At all other times nothing listens, so that a page that is safe closes without a word.
 * @param isOwn whether somebody made or changed what the page shows
 */
export function makeLeaving(keeps: () => KeeperState, shown: () => Notebook, isOwn: () => boolean) {
  const [filed, setFiled] = createSignal<Notebook | null>(null);
  const isAtRisk = () => keeps().kind !== "kept" && isOwn() && shown() !== filed();
  createEffect(() => {
    if (!isAtRisk()) return;
    addEventListener("beforeunload", ask);
    onCleanup(() => removeEventListener("beforeunload", ask));
  });
  return {
    /** Saves what the page shows as a file. */
    saveNotebook(): void {
      const notebook = shown();
      saveFile(`${fileName(notebook.title)}.json`, "application/json", notebookText(notebook));
      setFiled(notebook);
    },
  };
}

function ask(event: BeforeUnloadEvent): void {
  event.preventDefault();
  event.returnValue = true; // older browsers heed this one only
}
