import { For, Show } from "solid-js";
import { exampleNotebook } from "../notebook/exampleNotebook.ts";
import { InstallAct } from "../offline/InstallAct.tsx";
import { FileButton } from "../parts/FileButton.tsx";
import { LIGHT_WORDS, makeTheme } from "../parts/makeTheme.ts";
import type { Kept, NotebookStore, OnShelf } from "../store/notebookStore.ts";
import { FileDrop } from "./FileDrop.tsx";
import { makeShelf } from "./makeShelf.ts";

const when = (ms: number) => new Date(ms).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });

/** All notebooks that this browser keeps. */
export function Shelf(props: { store: NotebookStore }) {
  const theme = makeTheme();
  const { shelf, said, removed, partly, act, ...does } = makeShelf(props.store);
  return (
    <div class="page page-shelf">
      <FileDrop words="Let go to open the notebook or scenario file." onFile={(file) => void does.open(file)} />
      <main class="sheet">
        <header class="top">
          <p class="sheet-name">
            <strong>duskline</strong>
          </p>
          <div class="acts">
            <InstallAct />
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
            <button type="button" class="act" onClick={() => void act(() => does.add(exampleNotebook("example")))}>
              Put the example here
            </button>
            <FileButton
              words="Open a notebook or scenario file"
              accept=".json,application/json"
              onFile={(file) => void does.open(file)}
            />
          </p>
          <div role="status">
            <For each={said()}>{(sentence) => <p class="wrong">{sentence}</p>}</For>
            <Show when={partly()}>
              {(notebook) => (
                <button type="button" class="act" onClick={() => void does.openPartly(notebook())}>
                  Open what can be read
                </button>
              )}
            </Show>
            <Show when={removed()}>
              {(kept) => (
                <OffTheShelf
                  of={kept()}
                  onPutBack={() => void act(() => does.restore(kept()))}
                  onSave={() => does.saveKept(kept())}
                />
              )}
            </Show>
          </div>
          <ul class="shelf">
            <For each={shelf()} fallback={<li>Nothing here yet.</li>}>
              {(kept) => (
                <ShelfRow
                  of={kept}
                  onDuplicate={() => void act(() => does.duplicate(kept.id))}
                  onSave={() => void act(() => does.save(kept.id))}
                  onDelete={() => void act(() => does.remove(kept.id))}
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
