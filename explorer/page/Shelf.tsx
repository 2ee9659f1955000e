import { createResource, createSignal, For, onCleanup, Show } from "solid-js";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import { fileName, saveFile } from "../download/saveFile.ts";
import { exampleNotebook } from "../notebook/exampleNotebook.ts";
import { notebookText } from "../notebook/notebookText.ts";
import { FileButton } from "../parts/FileButton.tsx";
import { LIGHT_WORDS, makeTheme } from "../parts/makeTheme.ts";
import type { Kept, NotebookStore, OnShelf } from "../store/notebookStore.ts";
import { whyUnkept } from "../store/whyUnkept.ts";
import { FileDrop } from "./FileDrop.tsx";
import { openCopy, takeFile } from "./takeFile.ts";

const when = (ms: number) => new Date(ms).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });

/** All notebooks that this browser keeps. */
export function Shelf(props: { store: NotebookStore }) {
  const theme = makeTheme();
  const [shelf, { refetch }] = createResource(() => props.store.list());
  onCleanup(props.store.watch(() => void refetch()));
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
    await props.store.create({ ...notebook, id: freeId(notebook.title, []) }, Date.now());
    return says;
  };
  /** What can be read of the file that was given last, where not all of it can. */
  const [partly, setPartly] = createSignal<Notebook | null>(null);
  const open = async (file: File) => {
    const unopened = await takeFile(file, props.store);
    setSaid(unopened.sentences);
    setPartly(unopened.partly ?? null);
  };
  const openPartly = async (notebook: Notebook) => setSaid((await openCopy(notebook, props.store)).sentences);
  const duplicate = async (id: string) => {
    const found = await props.store.open(id);
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
    const kept = await props.store.raw(id);
    if (kept === null) return ["It is not on the shelf any more."];
    saveKept(kept);
  };
  const remove = async (id: string) => {
    try {
      setRemoved(await props.store.remove(id));
      return [];
    } catch (error) {
      return [`It could not be taken off the shelf: ${error instanceof Error ? error.message : error}.`];
    }
  };
  // Until it lies there again it stays at hand: there may be no room for it now.
  const restore = async (kept: Kept) => {
    await props.store.putBack(kept);
    setRemoved(null);
    return [];
  };
  return (
    <div class="page page-shelf">
      <FileDrop words="Let go to open the notebook or scenario file." onFile={(file) => void open(file)} />
      <main class="sheet">
        <header class="top">
          <p class="sheet-name">
            <strong>duskline</strong>
          </p>
          <div class="acts">
            <button type="button" class="act" onClick={() => theme.turn()}>
              Light: {LIGHT_WORDS[theme.light()]}
            </button>
          </div>
        </header>
        <div class="answer-block">
          <h1 class="answer">Notebooks on this shelf</h1>
          <p class="more">They are kept in this browser and nowhere else. A file is the way to another machine.</p>
        </div>
        <div class="margin-left">
          <p class="acts-row">
            <a class="act" href="?new">
              New notebook, six questions
            </a>
            <button type="button" class="act" onClick={() => void act(() => add(exampleNotebook("example")))}>
              Put the example here
            </button>
            <FileButton
              words="Open a notebook or scenario file"
              accept=".json,application/json"
              onFile={(file) => void open(file)}
            />
          </p>
          <div role="status">
            <For each={said()}>{(sentence) => <p class="wrong">{sentence}</p>}</For>
            <Show when={partly()}>
              {(notebook) => (
                <button type="button" class="act" onClick={() => void openPartly(notebook())}>
                  Open what can be read
                </button>
              )}
            </Show>
            <Show when={removed()}>
              {(kept) => (
                <OffTheShelf
                  of={kept()}
                  onPutBack={() => void act(() => restore(kept()))}
                  onSave={() => saveKept(kept())}
                />
              )}
            </Show>
          </div>
          <ul class="shelf">
            <For each={shelf()} fallback={<li>Nothing here yet.</li>}>
              {(kept) => (
                <ShelfRow
                  of={kept}
                  onDuplicate={() => void act(() => duplicate(kept.id))}
                  onSave={() => void act(() => save(kept.id))}
                  onDelete={() => void act(() => remove(kept.id))}
                />
              )}
            </For>
          </ul>
        </div>
      </main>
    </div>
  );
}

function ShelfRow(props: { of: OnShelf; onDuplicate(): void; onSave(): void; onDelete(): void }) {
  return (
    <li>
      <a href={`?notebook=${props.of.id}`}>{props.of.title}</a>
      <span class="shelf-when">changed {when(props.of.changedMs)}</span>
      <span class="acts">
        <button
          type="button"
          class="act"
          aria-label={`Duplicate ${props.of.title}`}
          onClick={() => props.onDuplicate()}
        >
          Duplicate
        </button>
        <button
          type="button"
          class="act"
          aria-label={`Save ${props.of.title} as a file`}
          onClick={() => props.onSave()}
        >
          Save file
        </button>
        <button type="button" class="act" aria-label={`Delete ${props.of.title}`} onClick={() => props.onDelete()}>
          Delete
        </button>
      </span>
    </li>
  );
}

/** What was taken off the shelf last: it stays at hand until it lies there again. */
function OffTheShelf(props: { of: Kept; onPutBack(): void; onSave(): void }) {
  return (
    <p>
      “{props.of.title}” is off the shelf.{" "}
      <button type="button" class="act" onClick={() => props.onPutBack()}>
        Put it back
      </button>{" "}
      <button type="button" class="act" onClick={() => props.onSave()}>
        Save it as a file
      </button>
    </p>
  );
}
