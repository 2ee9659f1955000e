import fc from "fast-check";
import { expect, test } from "vitest";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { makeKeeper } from "../../explorer/store/makeKeeper.ts";
import type { Held, NotebookStore } from "../../explorer/store/notebookStore.ts";
import { type Act, acts, keptRuns, TabLog, type TextTab } from "./store/tabModel.ts";

const example = exampleNotebook("example");
const titled = (title: string): Notebook => ({ ...example, title });
/** Until every promise that waits for no clock has been kept: the store is in memory. */
const settled = () => new Promise((resolve) => setImmediate(resolve));

interface Lying {
  readonly identity: string;
  readonly revision: number;
  readonly notebook: Notebook;
}

/** A store that looks and writes at once, as the browser's does; `waits` stands before and after each of its deeds. */
function memoryStore(waits: () => Promise<unknown> = async () => {}) {
  const kept = new Map<string, Lying>();
  const listeners = new Set<{ tab: number; hear: (id: string | null) => void }>();
  const full = { isFull: false };
  let identities = 0;
  const deed = async <Result>(work: () => Result): Promise<Result> => {
    await waits();
    const result = work();
    await waits();
    return result;
  };
  const put = (id: string, lying: Lying) => {
    if (full.isFull) throw new DOMException("full", "QuotaExceededError");
    kept.set(id, { ...lying, notebook: { ...lying.notebook, id } });
  };
  const heldOf = (id: string, { identity, revision }: Lying): Held => ({ id, identity, revision });
  const tellOthers = (tab: number, id: string) => {
    for (const listener of listeners) if (listener.tab !== tab) void waits().then(() => listener.hear(id));
  };
  const storeOf = (tab: number): NotebookStore => {
    const tell = (id: string) => tellOthers(tab, id);
    return {
      list: () => deed(() => [...kept].map(([id, { notebook }]) => ({ id, title: notebook.title, changedMs: 0 }))),
      open: (id) =>
        deed(() => {
          const found = kept.get(id);
          return found === undefined
            ? { kind: "none" }
            : { kind: "open", notebook: found.notebook, held: heldOf(id, found) };
        }),
      create: (notebook, _, adopts) =>
        deed(() => {
          const there = kept.get(notebook.id);
          if (adopts && JSON.stringify(there?.notebook) === JSON.stringify(notebook))
            return heldOf(notebook.id, there!);
          let { id } = notebook;
          for (let k = 2; kept.has(id); k++) id = `${notebook.id}-${k}`;
          put(id, { identity: `i${identities++}`, revision: 1, notebook });
          tell(id);
          return heldOf(id, kept.get(id)!);
        }),
      save: (notebook, held) =>
        deed(() => {
          const there = kept.get(held.id);
          const isGone = there?.identity !== held.identity;
          if (isGone || there?.revision !== held.revision) return { kind: "overtaken", isGone };
          put(held.id, { identity: held.identity, revision: held.revision + 1, notebook });
          tell(held.id);
          return { kind: "saved", held: heldOf(held.id, kept.get(held.id)!) };
        }),
      raw: async () => null,
      remove: (id) =>
        deed(() => {
          kept.delete(id);
          tell(id);
          return null;
        }),
      putBack: async () => {},
      watch: (hear) => {
        const listener = { tab, hear };
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
    };
  };
  return { kept, full, storeOf, tell: tellOthers };
}

function tab(store: NotebookStore | null, held: Held | null, notebook = example) {
  const seen: string[] = [];
  const keeper = makeKeeper(
    store,
    { notebook, held },
    {
      takeOver: (other) => seen.push(`took over ${other.title}`),
      becomes: (own) => seen.push(`goes on as ${own.id}: ${own.title}`),
      nowMs: () => 0,
    },
  );
  return { keeper, seen };
}
const first: Held = { id: "example", identity: "i0", revision: 1 };

test("what one tab saves the other takes over", async () => {
  const store = memoryStore();
  const one = tab(store.storeOf(1), null);
  one.keeper.keep(example);
  await settled();
  const other = tab(store.storeOf(2), first);
  one.keeper.keep(titled("Changed"));
  await settled();
  expect(other.seen).toEqual(["took over Changed"]);
  other.keeper.keep(titled("Changed again"));
  await settled();
  expect(one.seen).toEqual(["took over Changed again"]);
  store.tell(-1, "example");
  await settled();
  expect(one.seen).toEqual(["took over Changed again"]);
  expect(store.kept.get("example")?.revision).toBe(3);
});

test("tabs that changed it at once both keep what they have, however many they are", async () => {
  const store = memoryStore();
  tab(store.storeOf(0), null).keeper.keep(example);
  await settled();
  const tabs = [1, 2, 3, 4].map((k) => tab(store.storeOf(k), first));
  for (const [k, { keeper }] of tabs.entries()) keeper.keep(titled(`Mine ${k}`));
  await settled();
  expect([...store.kept].map(([id, { notebook }]) => `${id}: ${notebook.title}`)).toEqual([
    "example: Mine 0",
    "example-b: Mine 1 (other tab)",
    "example-b-2: Mine 2 (other tab)",
    "example-b-3: Mine 3 (other tab)",
  ]);
  for (const { keeper } of tabs) expect(keeper.state()).toEqual({ kind: "kept" });
});

test("one that was taken off the shelf is said to be kept nowhere, and the next change keeps it beside what lies there now", async () => {
  const store = memoryStore();
  const one = tab(store.storeOf(1), null);
  one.keeper.keep(example);
  await settled();
  const shelf = store.storeOf(2);
  await shelf.remove("example");
  await settled();
  expect(one.keeper.state()).toMatchObject({ kind: "unkept", sentence: expect.stringMatching(/off the shelf/) });
  await shelf.create(titled("Another"), 0);
  await settled();
  one.keeper.keep(titled("Mine"));
  await settled();
  expect(one.keeper.state()).toEqual({ kind: "kept" });
  expect(one.seen).toEqual(["goes on as example-2: Mine"]);
  expect([...store.kept].map(([id, { notebook }]) => `${id}: ${notebook.title}`)).toEqual([
    "example: Another",
    "example-2: Mine",
  ]);
});

test("undo while a save is under way is saved in its turn", async () => {
  const store = memoryStore(settled);
  const { keeper } = tab(store.storeOf(1), null);
  const atRest = async () => {
    while (keeper.state().kind === "saving") await settled();
  };
  keeper.keep(example);
  await atRest();
  keeper.keep(titled("Changed"));
  keeper.keep(example);
  expect(keeper.state()).toEqual({ kind: "saving" });
  await atRest();
  expect(keeper.state()).toEqual({ kind: "kept" });
  expect(store.kept.get("example")?.notebook.title).toBe(example.title);
});

test("a browser that keeps nothing, or has no room, is said and a file is offered", async () => {
  expect(tab(null, null).keeper.state()).toMatchObject({ kind: "unkept", sentence: expect.stringMatching(/file/) });
  const store = memoryStore();
  const { keeper } = tab(store.storeOf(1), null);
  store.full.isFull = true;
  keeper.keep(example);
  await settled();
  expect(keeper.state()).toMatchObject({ kind: "unkept", sentence: expect.stringMatching(/no room.*file/) });
  store.full.isFull = false;
  keeper.keep(titled("Smaller"));
  await settled();
  expect(keeper.state()).toEqual({ kind: "kept" });
});

test("whatever two to five tabs do, in whatever order the store answers: nothing said to be kept is lost", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.scheduler(),
      acts(40),
      fc.array(fc.nat(4), { minLength: 40, maxLength: 40 }),
      async (s, all, pauses) => {
        const store = memoryStore(() => s.schedule(Promise.resolve()));
        const log = new TabLog();
        const tabs: TextTab[] = [];
        const textOf = (notebook: Notebook) => notebook.seed;
        const openTab = async (id: string) => {
          const own = store.storeOf(tabs.length);
          let isDead = false;
          const past: Notebook[] = [];
          const lies = store.kept.get(id);
          let shown = lies?.notebook ?? { ...example, id };
          const held = lies === undefined ? null : { id, identity: lies.identity, revision: lies.revision };
          const put = (next: Notebook) => {
            past.push(shown);
            shown = next;
            keeper.keep(next);
          };
          const never = new Promise<never>(() => {});
          const mortal = Object.fromEntries(
            Object.entries(own).map(([name, deed]) => [
              name,
              name === "watch"
                ? deed
                : (...given: never[]) =>
                    isDead
                      ? never
                      : (deed as (...all: never[]) => Promise<unknown>)(...given).then((result) =>
                          isDead ? never : result,
                        ),
            ]),
          ) as unknown as NotebookStore;
          const keeper = makeKeeper(mortal, { notebook: shown, held }, { takeOver: put, becomes: put, nowMs: () => 0 });
          keeper.keep(shown);
          const made: TextTab = {
            text: async () => textOf(shown),
            state: async () => keeper.state().kind,
            edit: async (text) => put({ ...shown, seed: text }),
            undo: async () => {
              const before = past.pop();
              if (before === undefined) return;
              shown = before;
              keeper.keep(before);
            },
            kill: async () => {
              isDead = true;
              keeper.close();
            },
          };
          tabs.push(made);
          return made;
        };
        const shelf = store.storeOf(-1);
        await log.run(all as readonly Act[], {
          open: openTab,
          texts: async () => [...store.kept].map(([id, { notebook }]) => ({ id, text: textOf(notebook) })),
          remove: async (id) => {
            const gone = store.kept.get(id);
            store.kept.delete(id);
            store.tell(-1, id);
            return gone === undefined ? null : textOf(gone.notebook);
          },
          create: async (id, text) => void shelf.create({ ...example, id, seed: text }, 0).catch(() => {}),
          full: async (isFull) => {
            store.full.isFull = isFull;
          },
          pause: async (k) => {
            for (let i = 0; i < pauses[k % pauses.length]! && s.count() > 0; i++) await s.waitOne();
          },
          settle: () => s.waitIdle(),
        });
      },
    ),
    keptRuns(150),
  );
});
