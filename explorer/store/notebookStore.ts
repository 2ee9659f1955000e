import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import { notebookFrom } from "../../engine/notebook/readNotebook.ts";
import { makeNews, type News } from "./makeNews.ts";

/**
 * What lies in the browser, whatever it is. `revision` grows by one with every change, whichever tab made it; `identity` is drawn when the
 * notebook is first kept, so that another one that lies under the same id later is told from it.
 */
export interface Kept {
  readonly id: string;
  /** Left out by older versions. */
  readonly identity?: string;
  readonly title: string;
  readonly changedMs: number;
  readonly revision: number;
  readonly notebook: unknown;
}

interface Shape extends DBSchema {
  notebooks: { key: string; value: Kept };
}

/** What a tab knows of the notebook that it shows as it lies in the store: whatever it writes is written on top of that, or not at all. */
export interface Held {
  readonly id: string;
  readonly identity: string;
  readonly revision: number;
}

/** What the shelf shows of a notebook. */
export interface OnShelf {
  readonly id: string;
  readonly title: string;
  readonly changedMs: number;
}

export type Opened =
  | { readonly kind: "open"; readonly notebook: Notebook; readonly held: Held }
  | { readonly kind: "none" }
  /** Not all of it can be read: what can be is a notebook of its own, not kept yet; what lies in the store stays as it is. */
  | { readonly kind: "partly"; readonly notebook: Notebook; readonly missing: readonly string[] }
  /** It is there but cannot be read, as when a newer duskline wrote it; it stays as it is. */
  | { readonly kind: "refused"; readonly sentences: readonly string[] };

export type Saved =
  | { readonly kind: "saved"; readonly held: Held }
  /** Nothing was written: another tab was faster; or it was taken off the shelf (`isGone`), and another may lie there by now. */
  | { readonly kind: "overtaken"; readonly isGone: boolean };

export interface NotebookStore {
  list(): Promise<OnShelf[]>;
  open(id: string): Promise<Opened>;
  /**
   * Keeps a notebook that was not kept before, under its own id or one like it that is free.
   * @param adopts whether one that lies there already under the id and is the same, letter by letter, is taken for it
   */
  create(notebook: Notebook, nowMs: number, adopts?: boolean): Promise<Held>;
  /** Keeps a notebook on top of what the tab holds. */
  save(notebook: Notebook, held: Held, nowMs: number): Promise<Saved>;
  /** What lies there, as it lies there: it can be saved as a file whether it can be read or not. */
  raw(id: string): Promise<Kept | null>;
  /** Takes it off the shelf, whether it can be read or not. @returns what lay there */
  remove(id: string): Promise<Kept | null>;
  /** Puts back what was taken off the shelf, as it was. */
  putBack(kept: Kept): Promise<void>;
  /** Calls whenever something in the store may have been changed by others: by the notebook's id, or null for any. @returns the end of it */
  watch(listener: (id: string | null) => void): () => void;
}

/** Said to be kept is what has reached the disk. */
const STRICT = { durability: "strict" } as const;

/**
 * Opens the browser's store of notebooks. Each change looks and writes in one transaction, and the browser runs those one after the other,
 * across all tabs: two tabs cannot both believe to have been first.
 * @throws when the browser keeps nothing, as some do in private windows
 */
export async function openNotebookStore(name = "duskline", news: News = makeNews(name)): Promise<NotebookStore> {
  let connection: Promise<IDBPDatabase<Shape>> | null = null;
  const connected = () => {
    connection ??= openDB<Shape>(name, 1, {
      upgrade: (fresh) => {
        fresh.createObjectStore("notebooks", { keyPath: "id" });
      },
      // A newer version in another tab waits for this one to let go.
      blocking: (_, __, event) => {
        (event.target as IDBDatabase).close();
        connection = null;
      },
      terminated: () => {
        connection = null;
      },
    });
    connection.catch(() => {
      connection = null;
    });
    return connection;
  };
  await connected();

  /** Looks and writes in one transaction; the promise holds when what was written is on the disk. */
  async function change<Result>(work: (shelf: Writing) => Promise<Result>): Promise<Result> {
    const db = await connected();
    const transaction = db.transaction("notebooks", "readwrite", STRICT);
    const [result] = await Promise.all([work(transaction.store), transaction.done]);
    return result;
  }

  return {
    async list() {
      const all = await (await connected()).getAll("notebooks");
      const shelf = all.map(({ id, title, changedMs }) => ({ id, title: String(title), changedMs: Number(changedMs) }));
      return shelf.sort((a, b) => b.changedMs - a.changedMs);
    },
    async open(id) {
      const db = await connected();
      const kept = await db.get("notebooks", id);
      if (kept === undefined) return { kind: "none" };
      const read = notebookFrom(kept.notebook);
      // Whatever its own words are, it is the notebook that lies there.
      if (read.ok) return { kind: "open", notebook: { ...read.notebook, id }, held: heldOf(kept) };
      const { salvagedNotebook } = await import("../notebook/salvage/salvagedNotebook.ts");
      const salvaged = salvagedNotebook(kept.notebook, freeId(`${id.slice(0, 26)}-read`, await db.getAll("notebooks")));
      return salvaged.ok
        ? { kind: "partly", notebook: salvaged.notebook, missing: salvaged.missing }
        : { kind: "refused", sentences: salvaged.sentences };
    },
    async create(notebook, nowMs, adopts = false) {
      const text = readableText(notebook);
      const held = await change(async (shelf) => {
        const there = await shelf.get(notebook.id);
        if (adopts && there !== undefined && JSON.stringify(there.notebook) === text) return heldOf(there);
        const keys = there === undefined ? [] : await shelf.getAllKeys();
        const id =
          there === undefined
            ? notebook.id
            : freeId(
                notebook.id,
                keys.map(String).map((id) => ({ id })),
              );
        const fresh = { id, identity: freshIdentity(), revision: 1 };
        await shelf.put({ ...fresh, title: notebook.title, changedMs: nowMs, notebook: { ...JSON.parse(text), id } });
        return fresh;
      });
      news.tell(held.id);
      return held;
    },
    async save(notebook, held, nowMs) {
      const { id, identity } = held;
      const text = readableText({ ...notebook, id });
      const next = { id, identity, revision: held.revision + 1 };
      const done = await change(async (shelf): Promise<Saved> => {
        const there = await shelf.get(id);
        const isGone = there === undefined || (there.identity ?? "") !== identity;
        if (isGone || there.revision !== held.revision) return { kind: "overtaken", isGone };
        await shelf.put({ ...next, title: notebook.title, changedMs: nowMs, notebook: JSON.parse(text) });
        return { kind: "saved", held: next };
      });
      if (done.kind === "saved") news.tell(id);
      return done;
    },
    raw: async (id) => (await (await connected()).get("notebooks", id)) ?? null,
    async remove(id) {
      const there = await change(async (shelf) => {
        const kept = await shelf.get(id);
        await shelf.delete(id);
        return kept ?? null;
      });
      news.tell(id);
      return there;
    },
    async putBack(kept) {
      const id = await change(async (shelf) => {
        const keys = (await shelf.getAllKeys()).map((key) => ({ id: String(key) }));
        const isTaken = keys.some((key) => key.id === kept.id);
        const id = isTaken ? freeId(kept.id, keys) : kept.id;
        await shelf.put(isTaken ? { ...kept, id, notebook: { ...(kept.notebook as object), id } } : kept);
        return id;
      });
      news.tell(id);
    },
    watch: news.hear,
  };
}

/** The part of a transaction's store that is used here. */
interface Writing {
  get(id: string): Promise<Kept | undefined>;
  getAllKeys(): Promise<string[]>;
  put(kept: Kept): Promise<unknown>;
  delete(id: string): Promise<void>;
}

const heldOf = ({ id, identity = "", revision }: Kept): Held => ({ id, identity, revision });

/** 128 bits of chance. `crypto.randomUUID` exists on safe addresses alone, and a laptop in a field serves plain http. */
const freshIdentity = () =>
  [...crypto.getRandomValues(new Uint32Array(4))].map((word) => word.toString(16).padStart(8, "0")).join("");

/** A notebook as it will lie there: nothing is written that could not be opened again. */
function readableText(notebook: Notebook): string {
  const text = JSON.stringify(notebook);
  const readable = notebookFrom(JSON.parse(text));
  if (!readable.ok) throw new Error(`it could not be opened again: ${readable.sentences[0]}`);
  return text;
}
