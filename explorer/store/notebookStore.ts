import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Notebook } from "../notebook/notebook.ts";
import { notebookFrom } from "../notebook/readNotebook.ts";

/** A notebook as it lies in the browser; `revision` grows by one with every change, whichever tab made it. */
interface Kept {
  readonly id: string;
  readonly title: string;
  readonly changedMs: number;
  readonly revision: number;
  readonly notebook: unknown;
}

interface Shape extends DBSchema {
  notebooks: { key: string; value: Kept };
}

/** What the shelf shows of a notebook. */
export interface OnShelf {
  readonly id: string;
  readonly title: string;
  readonly changedMs: number;
}

export type Opened =
  | { readonly kind: "open"; readonly notebook: Notebook; readonly revision: number }
  | { readonly kind: "none" }
  /** It is there but cannot be read, as when a newer duskline wrote it; it stays as it is. */
  | { readonly kind: "refused"; readonly sentences: readonly string[] };

export type Saved =
  | { readonly kind: "saved"; readonly revision: number }
  /** Another tab was faster: what it wrote stays, and is handed back with its revision. */
  | { readonly kind: "overtaken"; readonly notebook: Notebook; readonly revision: number };

export interface NotebookStore {
  list(): Promise<OnShelf[]>;
  open(id: string): Promise<Opened>;
  /** Saves on top of `revision`, the one that the change was made on; 0 for a new notebook. */
  save(notebook: Notebook, revision: number, nowMs: number): Promise<Saved>;
  remove(id: string): Promise<void>;
}

/**
 * Opens the browser's store of notebooks.
 * @throws when the browser keeps nothing, as some do in private windows
 */
export async function openNotebookStore(name = "duskline"): Promise<NotebookStore> {
  const db: IDBPDatabase<Shape> = await openDB<Shape>(name, 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore("notebooks", { keyPath: "id" });
    },
    blocking: () => db.close(),
  });
  return {
    async list() {
      const all = await db.getAll("notebooks");
      const shelf = all.map(({ id, title, changedMs }) => ({ id, title, changedMs }));
      return shelf.sort((a, b) => b.changedMs - a.changedMs);
    },
    async open(id) {
      const kept = await db.get("notebooks", id);
      if (kept === undefined) return { kind: "none" };
      const read = notebookFrom(kept.notebook);
      return read.ok
        ? { kind: "open", notebook: read.notebook, revision: kept.revision }
        : { kind: "refused", sentences: read.sentences };
    },
    async save(notebook, revision, nowMs) {
      // Looked at and written in one transaction, so that two tabs cannot both believe to have been first.
      const change = db.transaction("notebooks", "readwrite");
      const kept = await change.store.get(notebook.id);
      if (kept !== undefined && kept.revision !== revision) {
        await change.done;
        const read = notebookFrom(kept.notebook);
        if (!read.ok) throw new Error(read.sentences[0]);
        return { kind: "overtaken", notebook: read.notebook, revision: kept.revision };
      }
      const next = { id: notebook.id, title: notebook.title, changedMs: nowMs, revision: revision + 1, notebook };
      await change.store.put(next);
      await change.done;
      return { kind: "saved", revision: next.revision };
    },
    remove: (id) => db.delete("notebooks", id),
  };
}
