import { createResource, createSignal, onCleanup } from "solid-js";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import { fileName, saveFile } from "../download/saveFile.ts";
import { notebookText } from "../notebook/notebookText.ts";
import type { Kept, NotebookStore } from "../store/notebookStore.ts";
import { whyUnkept } from "../store/whyUnkept.ts";
import { openCopy, takeFile } from "./takeFile.ts";

/** What lies on the shelf, and what can be done with it. */
export function makeShelf(store: NotebookStore) {
  const [shelf, { refetch }] = createResource(() => store.list());
  onCleanup(store.watch(() => void refetch()));
  const [said, setSaid] = createSignal<readonly string[]>([]);
  const [removed, setRemoved] = createSignal<Kept | null>(null);
  /** Does something to the shelf, and says what came of it where that is not to be seen there. */
  const act = async (work: () => Promise<readonly string[] | undefined>) => {
    try {
      setSaid((await work()) ?? []);
    } catch (error) {
      setSaid([whyUnkept(error)]);
    }
    await refetch();
  };
  const add = async (notebook: Notebook, ...says: readonly string[]) => {
    await store.create({ ...notebook, id: freeId(notebook.title, []) }, Date.now());
    return says;
  };
  /** What can be read of the file that was given last, where not all of it can. */
  const [partly, setPartly] = createSignal<Notebook | null>(null);
  const open = async (file: File) => {
    const unopened = await takeFile(file, store);
    setSaid(unopened.sentences);
    setPartly(unopened.partly ?? null);
  };
  const openPartly = async (notebook: Notebook) => setSaid((await openCopy(notebook, store)).sentences);
  const duplicate = async (id: string) => {
    const found = await store.open(id);
    if (found.kind === "open") return add({ ...found.notebook, title: `${found.notebook.title.slice(0, 110)}, copy` });
    if (found.kind === "refused") return found.sentences;
    if (found.kind === "none") return ["It is not on the shelf any more."];
    return add(
      { ...found.notebook, title: `${found.notebook.title.slice(0, 100)}, as far as read` },
      "The copy holds what can be read; the notebook itself stays as it is.",
      ...found.missing.slice(0, 8),
    );
  };
  // Out as a file and off the shelf goes whatever lies there, whether it can be read or not.
  const saveKept = ({ title, notebook }: Kept) =>
    saveFile(`${fileName(String(title))}.json`, "application/json", notebookText(notebook));
  const save = async (id: string) => {
    const kept = await store.raw(id);
    if (kept === null) return ["It is not on the shelf any more."];
    saveKept(kept);
  };
  const remove = async (id: string) => {
    try {
      setRemoved(await store.remove(id));
      return [];
    } catch (error) {
      return [`It could not be taken off the shelf: ${error instanceof Error ? error.message : error}.`];
    }
  };
  // Until it lies there again it stays at hand: there may be no room for it now.
  const restore = async (kept: Kept) => {
    await store.putBack(kept);
    setRemoved(null);
    return [];
  };
  return { shelf, said, removed, partly, act, add, open, openPartly, duplicate, save, saveKept, remove, restore };
}
