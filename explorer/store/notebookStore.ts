import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import { notebookFrom } from "../../engine/notebook/readNotebook.ts";

/** What lies in the browser, whatever it is; `revision` grows by one with every change, whichever tab made it. */
export interface Kept {
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
  /** Not all of it can be read: what can be is a notebook of its own, not kept yet; what lies in the store stays as it is. */
  | { readonly kind: "partly"; readonly notebook: Notebook; readonly missing: readonly string[] }
  /** It is there but cannot be read, as when a newer duskline wrote it; it stays as it is. */
  | { readonly kind: "refused"; readonly sentences: readonly string[] };

export type Saved =
  | { readonly kind: "saved"; readonly revision: number }
  /** Another tab was faster: what it wrote stays. */
  | { readonly kind: "overtaken"; readonly revision: number };

export interface NotebookStore {
  list(): Promise<OnShelf[]>;
  open(id: string): Promise<Opened>;
  /** Saves on top of `revision`, the one that the change was made on; 0 for a new notebook. */
  save(notebook: Notebook, revision: number, nowMs: number): Promise<Saved>;
  /** What lies there, as it lies there: it can be saved as a file whether it can be read or not. */
  raw(id: string): Promise<Kept | null>;
  /** Takes it off the shelf, whether it can be read or not. @returns what lay there */
  remove(id: string): Promise<Kept | null>;
  /** Puts back what was taken off the shelf, as it was. */
  putBack(kept: Kept): Promise<void>;
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
      const shelf = all.map(({ id, title, changedMs }) => ({ id, title: String(title), changedMs: Number(changedMs) }));
      return shelf.sort((a, b) => b.changedMs - a.changedMs);
    },
    async open(id) {
      const kept = await db.get("notebooks", id);
      if (kept === undefined) return { kind: "none" };
      const read = notebookFrom(kept.notebook);
      if (read.ok) return { kind: "open", notebook: read.notebook, revision: kept.revision };
      const { salvagedNotebook } = await import("../notebook/salvage/salvagedNotebook.ts");
      const salvaged = salvagedNotebook(kept.notebook, freeId(`${id.slice(0, 26)}-read`, await db.getAll("notebooks")));
      return salvaged.ok
        ? { kind: "partly", notebook: salvaged.notebook, missing: salvaged.missing }
        : { kind: "refused", sentences: salvaged.sentences };
    },
    async save(notebook, revision, nowMs) {
      const readable = notebookFrom(JSON.parse(JSON.stringify(notebook)));
      if (!readable.ok) throw new Error(`it could not be opened again: ${readable.sentences[0]}`);
      // Looked at and written in one transaction, so that two tabs cannot both believe to have been first.
      const change = db.transaction("notebooks", "readwrite");
      const kept = await change.store.get(notebook.id);
      if (kept !== undefined && kept.revision !== revision) {
        await change.done;
        return { kind: "overtaken", revision: kept.revision };
      }
      const next = {
        id: notebook.id,
        title: notebook.title,
        changedMs: nowMs,
        revision: revision + 1,
        notebook: readable.notebook,
      };
      await change.store.put(next);
      await change.done;
      return { kind: "saved", revision: next.revision };
    },
    raw: async (id) => (await db.get("notebooks", id)) ?? null,
    async remove(id) {
      const change = db.transaction("notebooks", "readwrite");
      const kept = await change.store.get(id);
      await change.store.delete(id);
      await change.done;
      return kept ?? null;
    },
    async putBack(kept) {
      const change = db.transaction("notebooks", "readwrite");
      const shelf = await change.store.getAll();
      const isTaken = shelf.some(({ id }) => id === kept.id);
      const id = isTaken ? freeId(kept.id, shelf) : kept.id;
      await change.store.put(isTaken ? { ...kept, id, notebook: { ...(kept.notebook as object), id } } : kept);
      await change.done;
    },
  };
}
