import { createMemo, createSignal, Show } from "solid-js";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { dateSpan } from "../../engine/ruler/rulerClock.ts";
import type { makeNotebook } from "../notebook/makeNotebook.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";
import { FileButton } from "../parts/FileButton.tsx";
import { LIGHT_WORDS, makeTheme } from "../parts/makeTheme.ts";
import { OutActs } from "../present/OutActs.tsx";
import { ShareActs } from "../share/ShareActs.tsx";

/** The head of the sheet: what the notebook is called, and what can be done with all of it. */
export function SheetHead(props: {
  state: ReturnType<typeof makeNotebook>;
  page: NotebookPage;
  days: RunPicture | null;
  isWorking: boolean;
  onSave(): void;
  onOpen(file: File): void;
  onSay(sentence: string): void;
}) {
  const theme = makeTheme();
  const [isMoreOpen, setMoreOpen] = createSignal(false);
  const isPhone = () => props.page.room().isPhone;
  return (
    <header class="top">
      <NotebookName
        notebook={props.state.now()}
        days={props.days}
        onTitle={(title) => props.state.act({ ...props.state.now(), title })}
      />
      <div class="acts no-print">
        <button type="button" class="act" disabled={!props.state.canUndo()} onClick={() => props.state.undo()}>
          Undo
        </button>
        <button type="button" class="act" disabled={!props.state.canRedo()} onClick={() => props.state.redo()}>
          Redo
        </button>
        <a class="act" href="?shelf">
          Shelf
        </a>
        <Show when={isPhone()}>
          <button type="button" class="act" aria-expanded={isMoreOpen()} onClick={() => setMoreOpen(!isMoreOpen())}>
            {isMoreOpen() ? "Less" : "More"}
          </button>
        </Show>
        {/* Folded away and not taken out: a report that waits, or slides that the address asks for, live in here. */}
        <span class="acts-more" hidden={isPhone() && !isMoreOpen()}>
          <button type="button" class="act" onClick={props.onSave}>
            Save file
          </button>
          <FileButton words="Open file" accept=".json,.csv,.epw,.tm3,.tmy3" onFile={props.onOpen} />
          <ShareActs notebook={props.state.now()} />
          <OutActs page={props.page} isWorking={props.isWorking} onSay={props.onSay} />
          <button type="button" class="act" onClick={() => theme.turn()}>
            Light: {LIGHT_WORDS[theme.light()]}
          </button>
        </span>
      </div>
    </header>
  );
}

/** The title, to be typed over, and the days that it is about. */
function NotebookName(props: { notebook: Notebook; days: RunPicture | null; onTitle(title: string): void }) {
  const title = createMemo(() => props.notebook.title);
  return (
    <p class="sheet-name">
      <input
        class="title-box notebook-title"
        type="text"
        aria-label="Title of the notebook"
        maxLength={120}
        value={title()}
        onChange={(event) => {
          const title = event.currentTarget.value.trim();
          if (title === "") event.currentTarget.value = props.notebook.title;
          else props.onTitle(title);
        }}
      />
      <span class="title-print">{props.notebook.title}</span>
      <Show when={props.days}>{(now) => <span class="dates">{dateSpan(now().ruler)}</span>}</Show>
    </p>
  );
}
