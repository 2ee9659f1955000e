import { createResource, createSignal, For, onCleanup, Show } from "solid-js";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import { fileName, saveFile } from "../download/saveFile.ts";
import { exampleNotebook } from "../notebook/exampleNotebook.ts";
import { notebookText } from "../notebook/notebookText.ts";
import { FileButton } from "../parts/FileButton.tsx";
import { LIGHT_WORDS, makeTheme } from "../parts/makeTheme.ts";
import type { Kept, NotebookStore, OnShelf } from "../store/notebookStore.ts";
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
  const add = async (notebook: Notebook) => {
    await props.store.create({ ...notebook, id: freeId(notebook.title, []) }, Date.now());
    await refetch();
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
    if (found.kind === "open") await add({ ...found.notebook, title: `${found.notebook.title.slice(0, 110)}, copy` });
    else if (found.kind === "refused") setSaid(found.sentences);
    else if (found.kind === "partly") {
      await add({ ...found.notebook, title: `${found.notebook.title.slice(0, 100)}, as far as read` });
      setSaid(["The copy holds what can be read; the notebook itself stays as it is.", ...found.missing.slice(0, 8)]);
    }
  };
  // Out as a file and off the shelf goes whatever lies there, whether it can be read or not.
  const save = async ({ id, title }: OnShelf) => {
    const kept = await props.store.raw(id);
    if (kept !== null) saveFile(`${fileName(title)}.json`, "application/json", notebookText(kept.notebook));
  };
  const remove = async (id: string) => {
    setRemoved(await props.store.remove(id));
    await refetch();
  };
  const restore = async () => {
    const kept = removed();
    if (kept === null) return;
    await props.store.putBack(kept);
    setRemoved(null);
    await refetch();
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
            <button type="button" class="act" onClick={() => void add(exampleNotebook("example"))}>
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
                <p>
                  “{kept().title}” is off the shelf.{" "}
                  <button type="button" class="act" onClick={() => void restore()}>
                    Put it back
                  </button>
                </p>
              )}
            </Show>
          </div>
          <ul class="shelf">
            <For each={shelf()} fallback={<li>Nothing here yet.</li>}>
              {(kept) => (
                <li>
                  <a href={`?notebook=${kept.id}`}>{kept.title}</a>
                  <span class="shelf-when">changed {when(kept.changedMs)}</span>
                  <span class="acts">
                    <button
                      type="button"
                      class="act"
                      aria-label={`Duplicate ${kept.title}`}
                      onClick={() => void duplicate(kept.id)}
                    >
                      Duplicate
                    </button>
                    <button
                      type="button"
                      class="act"
                      aria-label={`Save ${kept.title} as a file`}
                      onClick={() => void save(kept)}
                    >
                      Save file
                    </button>
                    <button
                      type="button"
                      class="act"
                      aria-label={`Delete ${kept.title}`}
                      onClick={() => void remove(kept.id)}
                    >
                      Delete
                    </button>
                  </span>
                </li>
              )}
            </For>
          </ul>
        </div>
      </main>
    </div>
  );
}
