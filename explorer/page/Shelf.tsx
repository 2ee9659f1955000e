import { createResource, createSignal, For, Show } from "solid-js";
import { fileName, saveFile } from "../download/saveFile.ts";
import { exampleNotebook } from "../notebook/exampleNotebook.ts";
import type { Notebook } from "../notebook/notebook.ts";
import { freeId } from "../notebook/notebookEdits.ts";
import type { NotebookStore } from "../store/notebookStore.ts";
import { FileButton } from "./FileButton.tsx";
import { FileDrop } from "./FileDrop.tsx";
import { LIGHT_WORDS, makeTheme } from "./makeTheme.ts";
import { takeFile } from "./takeFile.ts";

const when = (ms: number) => new Date(ms).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });

/** All notebooks that this browser keeps. */
export function Shelf(props: { store: NotebookStore }) {
  const theme = makeTheme();
  const [shelf, { refetch }] = createResource(() => props.store.list());
  const [said, setSaid] = createSignal<readonly string[]>([]);
  const [removed, setRemoved] = createSignal<Notebook | null>(null);
  const add = async (notebook: Notebook) => {
    const id = freeId(notebook.title, await props.store.list());
    await props.store.save({ ...notebook, id }, 0, Date.now());
    await refetch();
  };
  const open = async (file: File) => setSaid(await takeFile(file, props.store));
  const opened = async (id: string): Promise<Notebook | null> => {
    const found = await props.store.open(id);
    if (found.kind === "refused") setSaid(found.sentences);
    return found.kind === "open" ? found.notebook : null;
  };
  const duplicate = async (id: string) => {
    const notebook = await opened(id);
    if (notebook !== null) await add({ ...notebook, title: `${notebook.title.slice(0, 110)}, copy` });
  };
  const remove = async (id: string) => {
    const notebook = await opened(id);
    if (notebook === null) return;
    await props.store.remove(id);
    setRemoved(notebook);
    await refetch();
  };
  const restore = async () => {
    const notebook = removed();
    if (notebook === null) return;
    await props.store.save(notebook, 0, Date.now());
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
            <Show when={removed()}>
              {(notebook) => (
                <p>
                  “{notebook().title}” is off the shelf.{" "}
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
                      onClick={async () => {
                        const notebook = await opened(kept.id);
                        if (notebook === null) return;
                        saveFile(
                          `${fileName(notebook.title)}.json`,
                          "application/json",
                          JSON.stringify(notebook, null, 2),
                        );
                      }}
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
