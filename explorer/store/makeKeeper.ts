import { createSignal } from "solid-js";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import type { Held, NotebookStore } from "./notebookStore.ts";
import { whyUnkept } from "./whyUnkept.ts";

export type KeeperState =
  /** What the tab shows is what lies in the store. */
  | { readonly kind: "kept" }
  | { readonly kind: "saving" }
  /** What the tab shows is not in the store: a private window, no room, or another tab took it off the shelf. */
  | { readonly kind: "unkept"; readonly sentence: string };

const KEEPS_NOTHING =
  "This browser keeps nothing here (a private window, perhaps): save the notebook as a file before you leave.";
const OFF_THE_SHELF =
  "This notebook was taken off the shelf in another tab, and is kept nowhere now. The next change keeps it again, as a notebook of its own; or save it as a file.";

/**
 * Saves what a tab shows at every change, and shows what another tab saved. There is one thing at a time that it does with the store, and
 * after each it looks again at what the tab shows by then. When two tabs changed a notebook at once neither loses: the one that was
 * slower goes on with its own version as a notebook of its own.
 */
export function makeKeeper(
  store: NotebookStore | null,
  opened: {
    readonly notebook: Notebook;
    /** What the store holds of it; null where it was never kept. */
    readonly held: Held | null;
    /** What it was read from where that could not be read whole: it is kept once it is changed, and beside that. */
    readonly partly?: unknown;
  },
  hooks: {
    /** Another tab has changed the notebook: this is what lies in the store now. */
    readonly takeOver: (notebook: Notebook) => void;
    /** What the tab shows has become a notebook of its own; `isSplit` where another tab has the one that it was. */
    readonly becomes: (notebook: Notebook, isSplit: boolean) => void;
    readonly nowMs: () => number;
  },
) {
  const [state, setState] = createSignal<KeeperState>(
    store === null ? { kind: "unkept", sentence: KEEPS_NOTHING } : { kind: "kept" },
  );
  let { held } = opened;
  /** What the tab shows, and what of it lies in the store. */
  let shown = opened.notebook;
  let saved: Notebook | null = held !== null || opened.partly !== undefined ? shown : null;
  let isGone = false;
  let isBusy = false;
  let isLookDue = false;

  async function work(of: NotebookStore): Promise<void> {
    if (isBusy) return;
    isBusy = true;
    try {
      while (shown !== saved || isLookDue) {
        if (shown !== saved) await write(of, shown);
        else {
          isLookDue = false;
          await look(of);
        }
      }
      setState(isGone ? { kind: "unkept", sentence: OFF_THE_SHELF } : { kind: "kept" });
    } catch (error) {
      setState({ kind: "unkept", sentence: whyUnkept(error) });
    } finally {
      isBusy = false;
    }
  }

  async function write(of: NotebookStore, notebook: Notebook): Promise<void> {
    if (held === null) {
      held = await of.create(notebook, hooks.nowMs(), opened.partly === undefined);
      saved = notebook;
      if (held.id !== notebook.id || opened.partly !== undefined) become(held, notebook, notebook.title, false);
      return;
    }
    const done = await of.save(notebook, held, hooks.nowMs());
    if (done.kind === "saved") {
      held = done.held;
      saved = notebook;
      return;
    }
    const title = done.isGone ? notebook.title : `${notebook.title.slice(0, 100)} (other tab)`;
    const id = done.isGone ? held.id : `${held.id.slice(0, 26)}-b`;
    held = await of.create({ ...notebook, id, title }, hooks.nowMs());
    isGone = false;
    become(held, notebook, title, !done.isGone);
  }

  /** The tab goes on under another id; what was edited while that was written stays, and is written next. */
  function become({ id }: Held, written: Notebook, title: string, isSplit: boolean): void {
    const isEdited = shown !== written;
    const next = { ...shown, id, title: isEdited && shown.title !== written.title ? shown.title : title };
    saved = isEdited ? null : next;
    shown = next;
    hooks.becomes(next, isSplit);
  }

  async function look(of: NotebookStore): Promise<void> {
    if (held === null) return;
    const found = await of.open(held.id);
    // Whoever edits meanwhile meets the other tab's version when that edit is written.
    if (shown !== saved) return;
    isGone = found.kind !== "open" || found.held.identity !== held.identity;
    if (found.kind !== "open" || isGone || found.held.revision <= held.revision) return;
    held = found.held;
    saved = found.notebook;
    shown = found.notebook;
    hooks.takeOver(found.notebook);
  }

  const stopWatching = store?.watch((id) => {
    if (id !== null && id !== held?.id && state().kind !== "unkept") return;
    isLookDue = true;
    void work(store);
  });

  return {
    state,
    /** Keeps a notebook as the tab shows it now. */
    keep(notebook: Notebook): void {
      shown = notebook;
      if (store === null) return;
      if (shown !== saved) setState({ kind: "saving" });
      void work(store);
    },
    close: () => stopWatching?.(),
  };
}
