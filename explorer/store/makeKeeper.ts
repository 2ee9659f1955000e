import { createSignal } from "solid-js";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import type { NotebookStore } from "./notebookStore.ts";
import { whyUnkept } from "./whyUnkept.ts";

/** What tabs tell one another. */
interface Word {
  readonly id: string;
  readonly revision: number;
}

/** The part of a BroadcastChannel that is needed here. */
export interface Channel {
  postMessage(word: Word): void;
  onmessage: ((event: MessageEvent<Word>) => void) | null;
  close(): void;
}

export type KeeperState =
  | { readonly kind: "kept" }
  | { readonly kind: "saving" }
  /** Nothing can be kept here: a private window, or no room; a file can. */
  | { readonly kind: "unkept"; readonly sentence: string };

/**
 * Saves a notebook at every change, and takes over what another tab saved. When both tabs changed it at once, neither loses: the
 * tab that was slower goes on with its own version as a notebook of its own.
 */
export function makeKeeper(
  store: NotebookStore | null,
  channel: Channel | null,
  opened: {
    readonly notebook: Notebook;
    readonly revision: number;
    /** What it was read from where that could not be read whole: it is kept once it is changed, and beside that. */
    readonly partly?: unknown;
  },
  hooks: {
    /** Another tab has changed the notebook. */
    readonly takeOver: (notebook: Notebook) => void;
    /** This tab's version has become a notebook of its own. */
    readonly parted: (notebook: Notebook) => void;
    /** What could be read of a notebook is kept now, as one of its own. */
    readonly keptApart?: (notebook: Notebook) => void;
    readonly nowMs: () => number;
  },
) {
  const refusal =
    "This browser keeps nothing here (a private window, perhaps): save the notebook as a file before you leave.";
  const [state, setState] = createSignal<KeeperState>(
    store === null ? { kind: "unkept", sentence: refusal } : { kind: "kept" },
  );
  let { revision } = opened;
  let { id } = opened.notebook;
  let saved: Notebook | null = revision > 0 || opened.partly !== undefined ? opened.notebook : null;
  let waiting: Notebook | null = null;
  let isSaving = false;

  async function write(): Promise<void> {
    if (store === null || isSaving) return;
    isSaving = true;
    setState({ kind: "saving" });
    try {
      while (waiting !== null) {
        const notebook = waiting;
        waiting = null;
        const done = await store.save(notebook, revision, hooks.nowMs());
        if (done.kind === "saved") {
          if (revision === 0 && opened.partly !== undefined) hooks.keptApart?.(notebook);
          revision = done.revision;
          saved = notebook;
          channel?.postMessage({ id, revision });
        } else {
          const newest: Notebook = waiting ?? notebook;
          waiting = null;
          const apart = {
            ...newest,
            id: freeId(`${id.slice(0, 26)}-b`, await store.list()),
            title: `${newest.title.slice(0, 100)} (other tab)`,
          };
          const put = await store.save(apart, 0, hooks.nowMs());
          revision = put.revision;
          id = apart.id;
          saved = apart;
          hooks.parted(apart);
        }
      }
      setState({ kind: "kept" });
    } catch (error) {
      setState({ kind: "unkept", sentence: whyUnkept(error) });
    } finally {
      isSaving = false;
    }
  }

  if (channel !== null) {
    channel.onmessage = async ({ data }) => {
      if (store === null || data.id !== id || data.revision <= revision || isSaving || waiting !== null) return;
      const found = await store.open(id);
      if (found.kind !== "open" || isSaving || waiting !== null) return;
      revision = found.revision;
      saved = found.notebook;
      hooks.takeOver(found.notebook);
    };
  }

  return {
    state,
    /** Saves a notebook as it is now. */
    keep(notebook: Notebook): void {
      if (notebook === saved) return;
      waiting = notebook;
      void write();
    },
    close: () => channel?.close(),
  };
}
