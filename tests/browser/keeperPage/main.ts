import type { Notebook } from "../../../engine/notebook/notebook.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { makeNotebook } from "../../../explorer/notebook/makeNotebook.ts";
import { makeKeeper } from "../../../explorer/store/makeKeeper.ts";
import { type NotebookStore, openNotebookStore } from "../../../explorer/store/notebookStore.ts";

/** A tab without a sheet: its notebook, its keeper and the browser's own store, moved by the test. A notebook's seed is its text. */
const faults = { isFull: false, slowMs: 0 };
const store = await openNotebookStore(location.search.slice(1) || "kept");

// The disk's own failures, as the browser reports them: a store that is full aborts the transaction that it was met in.
const { put } = IDBObjectStore.prototype;
IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given: Parameters<typeof put>) {
  if (faults.isFull) throw new DOMException("full", "QuotaExceededError");
  return put.apply(this, given);
};

/** The same store on a slow disk: each answer takes its time. */
const slow = new Proxy(store, {
  get(of, name: keyof NotebookStore) {
    const deed = of[name] as (...given: unknown[]) => unknown;
    if (name === "watch") return deed;
    return async (...given: unknown[]) => {
      if (faults.slowMs > 0) await new Promise((resolve) => setTimeout(resolve, faults.slowMs * Math.random()));
      return deed(...given);
    };
  },
});

let shown: () => Notebook = () => exampleNotebook("none");
let keeper: ReturnType<typeof makeKeeper> | null = null;
let undo = () => {};
let act = (_: Notebook): unknown => null;

const tab = {
  async open(id: string): Promise<void> {
    const found = await store.open(id);
    const opened =
      found.kind === "open"
        ? { notebook: found.notebook, held: found.held }
        : { notebook: exampleNotebook(id), held: null };
    const state = makeNotebook(opened.notebook);
    shown = state.now;
    keeper = makeKeeper(slow, opened, {
      takeOver: (notebook) => {
        state.takeOver(notebook);
        keeper!.keep(state.now());
      },
      becomes: (notebook) => {
        state.takeOver(notebook);
        keeper!.keep(state.now());
      },
      nowMs: () => Date.now(),
    });
    act = state.act;
    undo = state.undo;
    keeper.keep(state.now());
  },
  text: () => shown().seed,
  state: () => keeper!.state().kind,
  edit(text: string): void {
    act({ ...shown(), seed: text });
    keeper!.keep(shown());
  },
  undo(): void {
    undo();
    keeper!.keep(shown());
  },
  faults,
  async texts(): Promise<{ id: string; text: string }[]> {
    const all: { id: string; text: string }[] = [];
    for (const { id } of await store.list()) {
      const kept = await store.raw(id);
      if (kept !== null) all.push({ id, text: (kept.notebook as Notebook).seed });
    }
    return all;
  },
  async remove(id: string): Promise<string | null> {
    const kept = await store.remove(id);
    return kept === null ? null : (kept.notebook as Notebook).seed;
  },
  /** Saves twice on top of what one look found, then keeps another under the same name. */
  async stale(id: string): Promise<string[]> {
    const found = await store.open(id);
    if (found.kind !== "open") throw new Error("it was kept");
    const { notebook, held } = found;
    const first = await store.save({ ...notebook, seed: "first" }, held, Date.now());
    const second = await store.save({ ...notebook, seed: "second" }, held, Date.now());
    const other = await store.create({ ...notebook, seed: "other" }, Date.now());
    return [first.kind, second.kind, other.id];
  },
  create: (id: string, text: string) => store.create({ ...exampleNotebook(id), seed: text }, Date.now()),
};
export type KeeperTab = typeof tab;
Object.assign(globalThis, { tab });
