import { createMemo, ErrorBoundary, For, Show } from "solid-js";
import { Dynamic } from "solid-js/web";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import { frameBar } from "../../engine/drawing/frameBar.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";
import type { Entry, EntryKindName } from "../../engine/notebook/notebook.ts";
import { Drawn } from "../charts/Drawn.tsx";
import { PictureActs } from "../download/PictureActs.tsx";
import { ENTRY_KINDS, entryKindOf } from "../entries/list.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";
import { EntryFailed } from "./EntryFailed.tsx";
import type { IndexLine } from "./SheetIndex.tsx";

/** What can be done to an entry as a whole. */
export interface EntryActs {
  readonly edit: (entry: Entry, change: Partial<Entry>, label: string) => string | null;
  readonly move: (entry: Entry, by: number) => void;
  readonly drop: (draggedId: string, before: Entry) => void;
  readonly duplicate: (entry: Entry) => void;
  readonly remove: (entry: Entry) => void;
  readonly add: (kind: EntryKindName, at: number) => void;
}

/** The name under which an entry is dragged about. */
export const DRAGGED = "application/x-duskline-entry";

/** An entry on the sheet: the border bar, its letter and title, what can be done to it, and what its kind draws. */
export function EntryFrame(props: {
  entry: Entry;
  line: IndexLine;
  page: NotebookPage;
  days: RunPicture | null;
  scale: TimeScale | null;
  acts: EntryActs;
}) {
  // The line it comes with is new at every tick of the work; fields that are being typed in must not be filled in again for that.
  const entry = createMemo(() => props.entry);
  const title = createMemo(() => entry().title);
  const kind = () => entryKindOf(entry().kind);
  const titleId = () => `title-${entry().id}`;
  const isFolded = () => entry().folded === true;
  const edit = (doc: Entry["doc"], label: string) => props.acts.edit(entry(), { doc } as Partial<Entry>, label);
  const press = (event: KeyboardEvent) => {
    if (!event.altKey || (event.key !== "ArrowUp" && event.key !== "ArrowDown")) return;
    event.preventDefault();
    props.acts.move(entry(), event.key === "ArrowUp" ? -1 : 1);
  };
  return (
    <section
      class={`entry entry-${entry().kind}`}
      aria-labelledby={titleId()}
      id={entry().id}
      onDragOver={(event) => event.dataTransfer?.types.includes(DRAGGED) && event.preventDefault()}
      onDrop={(event) => {
        const dragged = event.dataTransfer?.getData(DRAGGED);
        if (!dragged) return;
        event.preventDefault();
        props.acts.drop(dragged, entry());
      }}
    >
      <Show when={props.scale !== null && props.days}>
        {(days) => (
          <div class="entry-frame">
            <svg
              width={props.scale!.widthPx}
              height="8"
              aria-hidden="true"
              style={{ transform: `translateX(${-props.page.scrollPx()}px)` }}
            >
              <Drawn of={frameBar(days().nights, props.scale!)} />
            </svg>
          </div>
        )}
      </Show>
      <div class="heading">
        <button
          type="button"
          class="letter"
          draggable={true}
          id={`letter-${entry().id}`}
          aria-label={`Entry ${props.line.letter}: drag it, or press Alt with the up or down arrow, to move it`}
          onKeyDown={press}
          onDragStart={(event) => event.dataTransfer?.setData(DRAGGED, entry().id)}
        >
          {props.line.letter}
        </button>
        <h2 id={titleId()}>
          <input
            class="title-box"
            type="text"
            aria-label={`Title of entry ${props.line.letter}`}
            maxLength={120}
            value={title()}
            onChange={(event) => {
              const title = event.currentTarget.value.trim();
              if (title === "") event.currentTarget.value = entry().title;
              else props.acts.edit(entry(), { title }, "title");
            }}
          />
          <span class="title-print">{entry().title}</span>
        </h2>
        <div class="acts no-print">
          <ErrorBoundary fallback={null}>
            <PictureActs page={props.page} entry={entry()} />
          </ErrorBoundary>
          <button
            type="button"
            class="act"
            aria-expanded={!isFolded()}
            onClick={() => props.acts.edit(entry(), { folded: !isFolded() }, "fold")}
          >
            {isFolded() ? "Unfold" : "Fold"}
          </button>
          <button type="button" class="act" onClick={() => props.acts.duplicate(entry())}>
            Copy
          </button>
          <button type="button" class="act" onClick={() => props.acts.remove(entry())}>
            Remove
          </button>
        </div>
      </div>
      <Show when={!isFolded()} fallback={<p class="margin-left folded-line">{props.line.says}</p>}>
        <ErrorBoundary
          fallback={(error, again) => <EntryFailed error={error} again={again} edited={props.page.notebook} />}
        >
          <Dynamic component={kind().View} id={entry().id} doc={entry().doc as never} page={props.page} edit={edit} />
        </ErrorBoundary>
      </Show>
    </section>
  );
}

/** The cross in the margin between two entries: adds one there. */
export function AddEntry(props: { between: string; at: number; acts: EntryActs }) {
  return (
    <details class="add-entry no-print">
      <summary aria-label={`Add an entry ${props.between}`} title={`Add an entry ${props.between}`}>
        <svg width="24" height="24" viewBox="0 0 24 24" aria-hidden="true">
          <path d="M12 5v14M5 12h14" />
        </svg>
        <span class="add-words">Add an entry</span>
      </summary>
      <ul>
        <For each={Object.values(ENTRY_KINDS)}>
          {(kind) => (
            <li>
              <button
                type="button"
                onClick={(event) => {
                  event.currentTarget.closest("details")!.open = false;
                  props.acts.add(kind.kind, props.at);
                }}
              >
                <strong>{kind.title}</strong> {kind.purpose}
              </button>
            </li>
          )}
        </For>
      </ul>
    </details>
  );
}
