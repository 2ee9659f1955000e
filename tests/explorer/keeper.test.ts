import { expect, test } from "vitest";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { type Channel, makeKeeper } from "../../explorer/store/makeKeeper.ts";
import type { NotebookStore } from "../../explorer/store/notebookStore.ts";

const example = exampleNotebook("example");
const titled = (title: string): Notebook => ({ ...example, title });
/** Until every promise that waits for no clock has been kept: the store is in memory. */
const settled = () => new Promise((resolve) => setImmediate(resolve));

/** A store that keeps revisions as the browser's does. */
function memoryStore(): NotebookStore & { kept: Map<string, { notebook: Notebook; revision: number }> } {
  const kept = new Map<string, { notebook: Notebook; revision: number }>();
  return {
    kept,
    list: async () => [...kept.values()].map(({ notebook: { id, title } }) => ({ id, title, changedMs: 0 })),
    open: async (id) => {
      const found = kept.get(id);
      return found === undefined ? { kind: "none" } : { kind: "open", ...found };
    },
    save: async (notebook, revision) => {
      const found = kept.get(notebook.id);
      if (found !== undefined && found.revision !== revision) return { kind: "overtaken", revision: found.revision };
      kept.set(notebook.id, { notebook, revision: revision + 1 });
      return { kind: "saved", revision: revision + 1 };
    },
    raw: async () => null,
    remove: async (id) => {
      kept.delete(id);
      return null;
    },
    putBack: async () => {},
  };
}

/** Two ends that hear one another. */
function channels(hear: boolean): [Channel, Channel] {
  const ends: Channel[] = [];
  const end = (other: number): Channel => ({
    postMessage: (data) => hear && ends[other]!.onmessage?.({ data } as MessageEvent),
    onmessage: null,
    close: () => {},
  });
  ends.push(end(1), end(0));
  return ends as [Channel, Channel];
}

function tab(store: NotebookStore | null, channel: Channel | null, revision: number) {
  const seen: string[] = [];
  const keeper = makeKeeper(
    store,
    channel,
    { notebook: example, revision },
    {
      takeOver: (notebook) => seen.push(`took over ${notebook.title}`),
      parted: (notebook) => seen.push(`parted as ${notebook.title}`),
      nowMs: () => 0,
    },
  );
  return { keeper, seen };
}

test("what one tab saves the other takes over", async () => {
  const store = memoryStore();
  const [here, there] = channels(true);
  const first = tab(store, here, 0);
  first.keeper.keep(example);
  await settled();
  const second = tab(store, there, 1);
  first.keeper.keep(titled("Changed"));
  await settled();
  expect(second.seen).toEqual(["took over Changed"]);
  second.keeper.keep(titled("Changed again"));
  await settled();
  expect(first.seen).toEqual(["took over Changed again"]);
  expect(store.kept.get("example")?.revision).toBe(3);
});

test("tabs that changed it at once both keep what they have", async () => {
  const store = memoryStore();
  const [here, there] = channels(false);
  const first = tab(store, here, 0);
  first.keeper.keep(example);
  await settled();
  const second = tab(store, there, 1);
  first.keeper.keep(titled("Mine"));
  await settled();
  second.keeper.keep(titled("Yours"));
  await settled();
  expect(second.seen).toEqual(["parted as Yours (other tab)"]);
  expect([...store.kept.values()].map(({ notebook }) => notebook.title).sort()).toEqual(["Mine", "Yours (other tab)"]);
});

test("a browser that keeps nothing, or has no room, is said and a file is offered", async () => {
  const none = tab(null, null, 0);
  expect(none.keeper.state()).toMatchObject({ kind: "unkept", sentence: expect.stringMatching(/file/) });
  const full = memoryStore();
  full.save = async () => {
    throw new DOMException("full", "QuotaExceededError");
  };
  const { keeper } = tab(full, null, 0);
  keeper.keep(example);
  await settled();
  expect(keeper.state()).toMatchObject({ kind: "unkept", sentence: expect.stringMatching(/no room.*file/) });
});
