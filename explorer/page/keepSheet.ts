import { createEffect, onCleanup } from "solid-js";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import type { NotebookState } from "../notebook/makeNotebook.ts";
import { askToPersist } from "../store/askToPersist.ts";
import { makeKeeper } from "../store/makeKeeper.ts";
import type { Held, NotebookStore } from "../store/notebookStore.ts";

/** Keeps a sheet's notebook in the browser at each change, and says what other tabs have made of it. */
export function keepSheet(
  store: NotebookStore | null,
  opened: { readonly notebook: Notebook; readonly held: Held | null },
  state: NotebookState,
  say: (sentence: string) => void,
) {
  const keeper = makeKeeper(store, opened, {
    takeOver: (notebook) => {
      state.takeOver(notebook);
      say("Another tab has changed this notebook; this one shows it now. Undo goes back.");
    },
    becomes: (notebook, isSplit) => {
      standsAt(notebook);
      state.takeOver(notebook);
      if (isSplit) {
        say("Two tabs changed this notebook at once. Both versions are on the shelf; this tab goes on with its own.");
      }
    },
    nowMs: () => Date.now(),
  });
  createEffect(() => keeper.keep(state.now()));
  createEffect(() => state.canUndo() && askToPersist());
  onCleanup(keeper.close);
  return keeper.state;
}

/** Lets the address name the notebook that the sheet shows, so that a reload brings that one. */
function standsAt(notebook: Notebook): void {
  history.replaceState(history.state, "", `${location.pathname}?notebook=${notebook.id}`);
}
