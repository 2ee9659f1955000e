import { createEffect, createMemo, createSignal, For, lazy, onCleanup, onMount, Show, untrack } from "solid-js";
import { askRuler } from "../../engine/answers/kinds.ts";
import { readingAt } from "../../engine/answers/run/readingAt.ts";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import { askedBy, leadOf } from "../../engine/notebook/asked.ts";
import { headlineOf } from "../../engine/notebook/headlineOf.ts";
import { letterOf } from "../../engine/notebook/letterOf.ts";
import type { Entry, EntryKindName, Notebook } from "../../engine/notebook/notebook.ts";
import {
  duplicateEntry,
  editEntry,
  freeId,
  moveEntry,
  withEntry,
  withoutEntry,
} from "../../engine/notebook/notebookEdits.ts";
import { clockAt, dateSpan } from "../../engine/ruler/rulerClock.ts";
import { nightWords, quietWords, zoneWords } from "../../engine/ruler/rulerWords.ts";
import { TimeRuler } from "../charts/TimeRuler.tsx";
import { fileName, saveFile } from "../download/saveFile.ts";
import { entryKindOf } from "../entries/list.ts";
import { makeNotebook } from "../notebook/makeNotebook.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";
import { notebookText } from "../notebook/notebookText.ts";
import { FileButton } from "../parts/FileButton.tsx";
import { fadesWhile } from "../parts/fadesWhile.ts";
import { tellFirstAnswer } from "../parts/firstAnswer.ts";
import { makeLasting } from "../parts/makeLasting.ts";
import { LIGHT_WORDS, makeTheme } from "../parts/makeTheme.ts";
import { makeWidth } from "../parts/makeWidth.ts";
import { NotMade } from "../parts/NotMade.tsx";
import { QuickFields } from "../parts/QuickFields.tsx";
import { SaidWords } from "../parts/SaidWords.tsx";
import { UnitsChoice } from "../parts/UnitsChoice.tsx";
import { OutActs } from "../present/OutActs.tsx";
import { PrintEnd } from "../report/PrintEnd.tsx";
import type { Desk } from "../results/desk.ts";
import { makeResults } from "../results/makeResults.ts";
import { ShareActs } from "../share/ShareActs.tsx";
import { type Channel, makeKeeper } from "../store/makeKeeper.ts";
import type { NotebookStore } from "../store/notebookStore.ts";
import { AddEntry, type EntryActs, EntryFrame } from "./EntryFrame.tsx";
import { FileDrop } from "./FileDrop.tsx";
import type { ReadPartly } from "./Missing.tsx";
import { makePage } from "./makePage.ts";
import { PhoneBar } from "./PhoneBar.tsx";
import { type EntryState, type IndexLine, SheetIndex } from "./SheetIndex.tsx";

const Missing = lazy(async () => ({ default: (await import("./Missing.tsx")).Missing }));

/** A notebook on its sheet: the answer, the ruler, and the entries that hang from it. */
export function Sheet(props: {
  opened: { readonly notebook: Notebook; readonly revision: number; readonly partly?: ReadPartly };
  /** Whether nothing is worked out before somebody says so. */
  waits: boolean;
  store: NotebookStore | null;
  channel: Channel | null;
  desk: Desk;
}) {
  const state = makeNotebook(props.opened.notebook);
  const results = makeResults(props.desk, () => untrack(state.now).weatherFiles);
  const theme = makeTheme();
  const sheet = makeWidth();
  const { page, lead, viewPx } = makePage(state, results, sheet.width, (id, file) => void take(file, id));
  const [said, setSaid] = createSignal("");
  const [isPlanOpen, setPlanOpen] = createSignal(false);
  const [isMoreOpen, setMoreOpen] = createSignal(false);
  const keeper = makeKeeper(props.store, props.channel, props.opened, {
    takeOver: (notebook) => {
      state.takeOver(notebook);
      setSaid("Another tab has changed this notebook; this one shows it now. Undo goes back.");
    },
    keptApart: standsAt,
    parted: (notebook) => {
      standsAt(notebook);
      state.takeOver(notebook);
      setSaid("Two tabs changed this notebook at once. Both versions are on the shelf; this tab goes on with its own.");
    },
    nowMs: () => Date.now(),
  });
  createEffect(() => keeper.keep(state.now()));
  onCleanup(keeper.close);

  const notebook = state.now;
  const title = createMemo(() => notebook().title);
  createEffect(() => {
    document.title = `${title()} · duskline`;
  });
  // Of the same days, the old ones: ruler and frames hang from them.
  const days = createMemo(() => lead(), undefined, { equals: isSameDays });
  const scale = createMemo(() => {
    const picture = days();
    return picture === null ? null : page.scale(picture);
  });
  const isPhone = () => page.room().isPhone;
  const isWorking = () => !results.isIdle();
  const isLongWork = makeLasting(isWorking);

  const answer = createMemo(() => headlineOf(page, notebook()));
  createEffect(() => {
    if (answer()?.words !== null || results.isIdle()) tellFirstAnswer();
  });
  const says = createMemo(() => notebook().entries.map((entry) => summaryOf(entry, page)));
  const lines = createMemo(() =>
    notebook().entries.map((entry, i): IndexLine => {
      const founds = askedBy(entry).map((asked) => page.find(asked));
      const states: EntryState = founds.some(({ problems }) => problems.length > 0)
        ? "attention"
        : isLongWork() && founds.some(({ progress }) => progress !== null)
          ? "working"
          : isLongWork() === isWorking() && founds.some(({ stale }) => stale)
            ? "stale"
            : "fresh";
      return { entry, letter: letterOf(i), says: says()[i] ?? "", state: states };
    }),
  );
  const hasTrouble = () => lines().some(({ state }) => state === "attention");
  const reading = createMemo(() => {
    const picture = lead();
    const ms = page.readingMs() ?? (isPhone() ? (picture?.verdict.lowestMs ?? null) : null);
    return picture === null || ms === null ? null : readingAt(picture, ms);
  });

  const acts: EntryActs = {
    edit: (entry, change, label) => {
      const next = editEntry(notebook(), entry.id, change);
      return label === "text" ? state.edit(`${entry.id} text`, next) : state.act(next);
    },
    move: (entry, by) => {
      const at = notebook().entries.findIndex(({ id }) => id === entry.id);
      state.act(moveEntry(notebook(), entry.id, at + by));
      document.getElementById(`letter-${entry.id}`)?.focus();
      const now = notebook().entries.findIndex(({ id }) => id === entry.id);
      setSaid(`${entry.title} is entry ${letterOf(now)} now.`);
    },
    drop: (dragged, before) => {
      const { entries } = notebook();
      const [from, to] = [dragged, before.id].map((id) => entries.findIndex((each) => each.id === id)) as [
        number,
        number,
      ];
      if (from < 0 || to < 0) return;
      state.act(moveEntry(notebook(), dragged, to));
    },
    duplicate: (entry) => void state.act(duplicateEntry(notebook(), entry.id)),
    remove: (entry) => {
      if (state.act(withoutEntry(notebook(), entry.id)) === null)
        setSaid(`${entry.title} is removed; Undo brings it back.`);
    },
    add: (name: EntryKindName, at) => {
      const kind = entryKindOf(name);
      const id = freeId(name, notebook().entries);
      if (state.act(withEntry(notebook(), { id, kind: name, ...kind.make(notebook()) } as Entry, at)) !== null) return;
      document.getElementById(id)?.scrollIntoView({ block: "nearest" });
      document.getElementById(`letter-${id}`)?.focus({ preventScroll: true });
    },
  };

  const undoKeys = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    event.preventDefault();
    if (key === "y" || event.shiftKey) state.redo();
    else state.undo();
  };
  onMount(() => props.waits && results.stop());
  onMount(() => document.addEventListener("keydown", undoKeys));
  onMount(() => document.addEventListener("scroll", tellFirstAnswer, { once: true, passive: true }));
  onCleanup(() => document.removeEventListener("scroll", tellFirstAnswer));
  onCleanup(() => document.removeEventListener("keydown", undoKeys));

  const take = async (file: File, weatherFor = leadOf(notebook())) => {
    const { takeFileInto } = await import("./takeFile.ts");
    const taken = await takeFileInto(file, props.store, notebook(), weatherFor);
    const why = taken.notebook === null ? null : state.act(taken.notebook);
    setSaid(why === null ? taken.sentences.join(" ") : `${file.name} is not taken in.`);
  };
  const saveNotebook = () =>
    saveFile(`${fileName(notebook().title)}.json`, "application/json", notebookText(notebook()));
  const between = (at: number) => {
    const [before, after] = [lines()[at - 1]?.letter, lines()[at]?.letter];
    if (before === undefined) return "before all others";
    return after === undefined ? `after ${before}` : `between ${before} and ${after}`;
  };
  const leadId = () => leadOf(notebook());

  return (
    <div
      class="page"
      classList={{
        "page-phone": isPhone(),
        "page-planning": isPlanOpen(),
        "page-scrolls": page.scrolls(),
        working: isWorking(),
      }}
    >
      <FileDrop words="Let go to take in the scenario, weather or notebook file." onFile={(file) => void take(file)} />
      <SheetIndex lines={lines()} />
      <NotMade why={state.refusal()} onClose={state.forgetRefusal} />
      <main class="sheet" ref={sheet.ref}>
        <header class="top">
          <p class="sheet-name">
            <input
              class="title-box notebook-title"
              type="text"
              aria-label="Title of the notebook"
              maxLength={120}
              value={title()}
              onChange={(event) => {
                const title = event.currentTarget.value.trim();
                if (title === "") event.currentTarget.value = notebook().title;
                else state.act({ ...notebook(), title });
              }}
            />
            <span class="title-print">{notebook().title}</span>
            <Show when={days()}>{(now) => <span class="dates">{dateSpan(now().ruler)}</span>}</Show>
          </p>
          <div class="acts no-print">
            <button type="button" class="act" disabled={!state.canUndo()} onClick={() => state.undo()}>
              Undo
            </button>
            <button type="button" class="act" disabled={!state.canRedo()} onClick={() => state.redo()}>
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
              <button type="button" class="act" onClick={saveNotebook}>
                Save file
              </button>
              <FileButton words="Open file" accept=".json,.csv,.epw,.tm3,.tmy3" onFile={(file) => void take(file)} />
              <ShareActs notebook={notebook()} />
              <OutActs page={page} isWorking={isWorking()} onSay={setSaid} />
              <button type="button" class="act" onClick={() => theme.turn()}>
                Light: {LIGHT_WORDS[theme.light()]}
              </button>
            </span>
          </div>
        </header>
        <div
          class="answer-block"
          aria-live="polite"
          aria-atomic="true"
          ref={fadesWhile(() => answer()?.stale ?? false)}
        >
          <h1 class="answer">
            <Show
              when={answer()?.words}
              fallback={
                hasTrouble()
                  ? "This plan cannot be worked out as it stands."
                  : answer() === null
                    ? notebook().title
                    : "Working it out…"
              }
            >
              {(words) => <SaidWords words={words()} />}
            </Show>
          </h1>
          <p class="more">{answer()?.more}</p>
        </div>
        <div class="sheet-state" role="status">
          <Show when={keeper.state().kind === "unkept" ? (keeper.state() as { sentence: string }).sentence : null}>
            {(sentence) => (
              <p class="wrong">
                {sentence()}{" "}
                <button type="button" class="act" onClick={saveNotebook}>
                  Save file
                </button>
              </p>
            )}
          </Show>
          <Show when={said()}>{(sentence) => <p>{sentence()}</p>}</Show>
        </div>
        <Show when={props.opened.partly}>{(partly) => <Missing of={partly()} store={props.store} />}</Show>
        <p class="work-line no-print">
          <Show
            when={isLongWork()}
            fallback={<span class="kept">{keeper.state().kind === "kept" ? "All kept in this browser." : ""}</span>}
          >
            <span>
              Working
              {results.progress() === null ? "…" : `: ${results.progress()!.done} of ${results.progress()!.of} skies`}
            </span>
            <button type="button" class="act" onClick={() => results.stop()}>
              Stop
            </button>
          </Show>
          <Show when={results.isStopped()}>
            <button type="button" class="act" onClick={() => results.goOn()}>
              Work it out
            </button>
          </Show>
        </p>
        <Show when={isPhone() && page.document(leadId())}>
          {(document) => (
            <div class="plan-place" id="planBlanks" classList={{ "plan-open": isPlanOpen() }}>
              <QuickFields
                document={document()}
                base={page.baseDocument(leadId())}
                problems={page.find(askRuler(leadId())).problems}
                onTurn={(field, changes) => page.turn(leadId(), field, changes)}
                onSettle={page.settle}
              />
            </div>
          )}
        </Show>
        <Show when={days() !== null && scale()}>
          {(at) => (
            <div class="ruler">
              <div class="ruler-view">
                <div
                  class="ruler-moving"
                  style={{ transform: `translateX(${-page.scrollPx()}px)`, width: `${at().widthPx}px` }}
                >
                  <TimeRuler picture={days()!} scale={at()} />
                  <Show when={reading()}>
                    {(read) => (
                      <span
                        class="tag"
                        classList={{ "tag-end": at().x(read().ms) > at().widthPx - 70 }}
                        style={{ left: `${at().x(read().ms)}px` }}
                      >
                        {clockWords(days()!.ruler, read().ms)}
                      </span>
                    )}
                  </Show>
                </div>
              </div>
              <p class="ruler-side">
                {zoneWords(days()!.ruler)}
                <br />
                {nightWords(days()!)}
                <Show when={quietWords(days()!)}>
                  {(words) => (
                    <>
                      <br />
                      {words()}
                    </>
                  )}
                </Show>
              </p>
            </div>
          )}
        </Show>
        <AddEntry between={between(0)} at={0} acts={acts} />
        <For each={notebook().entries.map(({ id }) => id)}>
          {(id, i) => (
            <Show when={lines().find(({ entry }) => entry.id === id)}>
              {(line) => (
                <>
                  <EntryFrame
                    entry={line().entry}
                    line={line()}
                    page={page}
                    days={days()}
                    scale={scale()}
                    acts={acts}
                  />
                  <AddEntry between={between(i() + 1)} at={i() + 1} acts={acts} />
                </>
              )}
            </Show>
          )}
        </For>
        <PrintEnd page={page} />
        <footer class="sheet-foot">
          <label>
            Seed
            <input
              type="text"
              maxLength={60}
              value={notebook().seed}
              onChange={(event) => {
                const seed = event.currentTarget.value.trim();
                if (seed === "") event.currentTarget.value = notebook().seed;
                else state.act({ ...notebook(), seed });
              }}
            />
          </label>
          <label>
            Skies drawn
            <select onChange={(event) => state.act({ ...notebook(), members: Number(event.currentTarget.value) })}>
              <For each={[...new Set([100, 300, 1000, 3000, notebook().members])].sort((a, b) => a - b)}>
                {(members) => (
                  <option value={members} selected={members === notebook().members}>
                    {members}
                  </option>
                )}
              </For>
            </select>
          </label>
          <UnitsChoice />
          <p>The same seed draws the same skies and the same people. Nothing leaves this machine.</p>
        </footer>
      </main>
      <Show when={isPhone() && lead() !== null && reading() !== null && scale() !== null}>
        <PhoneBar
          picture={lead()!}
          reading={reading()!}
          widthPx={sheet.width()}
          viewMs={[scale()!.ms(page.scrollPx()), scale()!.ms(page.scrollPx() + viewPx())]}
          isPlanOpen={isPlanOpen()}
          onRead={page.read}
          onPlan={() => setPlanOpen(!isPlanOpen())}
        />
      </Show>
    </div>
  );
}

/** An entry's line in the index; one that cannot be shown says so there too. */
function summaryOf(entry: Entry, page: NotebookPage): string {
  try {
    return entryKindOf(entry.kind).summary({ id: entry.id, doc: entry.doc as never, page, edit: () => null });
  } catch {
    return "cannot be shown";
  }
}

/** Lets the address name the notebook that the sheet shows, so that a reload brings that one. */
function standsAt(notebook: Notebook): void {
  history.replaceState(history.state, "", `${location.pathname}?notebook=${notebook.id}`);
}

/** Whether two runs lie on the same ruler, under the same nights and quiet hours. */
function isSameDays(a: RunPicture | null, b: RunPicture | null): boolean {
  const of = (picture: RunPicture | null) => picture && [picture.ruler, picture.nights, picture.quiet];
  return JSON.stringify(of(a)) === JSON.stringify(of(b));
}

function clockWords(ruler: Parameters<typeof clockAt>[0], ms: number): string {
  const { day, clock } = clockAt(ruler, ms);
  return `${day} ${clock}`;
}
