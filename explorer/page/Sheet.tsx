import { createEffect, createMemo, createSignal, For, lazy, onCleanup, onMount, Show, untrack } from "solid-js";
import { askRuler } from "../../engine/answers/kinds.ts";
import { readingAt } from "../../engine/answers/run/readingAt.ts";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import { askedBy, leadOf } from "../../engine/notebook/asked.ts";
import { headlineOf } from "../../engine/notebook/headlineOf.ts";
import { letterOf } from "../../engine/notebook/letterOf.ts";
import type { Entry, Notebook } from "../../engine/notebook/notebook.ts";
import { entryKindOf } from "../entries/list.ts";
import { makeNotebook } from "../notebook/makeNotebook.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";
import { tellFirstAnswer } from "../parts/firstAnswer.ts";
import { makeLasting } from "../parts/makeLasting.ts";
import { makeWidth } from "../parts/makeWidth.ts";
import { NotMade } from "../parts/NotMade.tsx";
import { QuickFields } from "../parts/QuickFields.tsx";
import { PrintEnd } from "../report/PrintEnd.tsx";
import type { Desk } from "../results/desk.ts";
import { makeResults } from "../results/makeResults.ts";
import { askToPersist } from "../store/askToPersist.ts";
import { makeKeeper } from "../store/makeKeeper.ts";
import type { Held, NotebookStore } from "../store/notebookStore.ts";
import { AnswerBlock } from "./AnswerBlock.tsx";
import { AddEntry, EntryFrame } from "./EntryFrame.tsx";
import { entryActs } from "./entryActs.ts";
import { FileDrop } from "./FileDrop.tsx";
import type { ReadPartly } from "./Missing.tsx";
import { makeLeaving } from "./makeLeaving.ts";
import { makePage } from "./makePage.ts";
import { PhoneBar } from "./PhoneBar.tsx";
import { RulerBar } from "./RulerBar.tsx";
import { SheetFoot } from "./SheetFoot.tsx";
import { SheetHead } from "./SheetHead.tsx";
import { type EntryState, type IndexLine, SheetIndex } from "./SheetIndex.tsx";
import { SheetState, WorkLine } from "./SheetState.tsx";
import { undoByKeys } from "./undoByKeys.ts";

const Missing = lazy(async () => ({ default: (await import("./Missing.tsx")).Missing }));

/** A notebook as it comes onto the sheet, and what of it lies in the store. */
export interface OpenedNotebook {
  readonly notebook: Notebook;
  readonly held: Held | null;
  readonly partly?: ReadPartly;
  /** Whether somebody has just made it, and it lies nowhere yet. */
  readonly isNew?: boolean;
}

/** A notebook on its sheet: the answer, the ruler, and the entries beneath it. */
export function Sheet(props: {
  opened: OpenedNotebook;
  /** Whether nothing is worked out before somebody says so. */
  waits: boolean;
  store: NotebookStore | null;
  desk: Desk;
}) {
  const state = makeNotebook(props.opened.notebook);
  const results = makeResults(props.desk, () => untrack(state.now).weatherFiles);
  const sheet = makeWidth();
  const { page, lead, viewPx } = makePage(state, results, sheet.width, (id, file) => void take(file, id));
  const [said, setSaid] = createSignal("");
  const [isPlanOpen, setPlanOpen] = createSignal(false);
  const keeper = makeKeeper(props.store, props.opened, {
    takeOver: (notebook) => {
      state.takeOver(notebook);
      setSaid("Another tab has changed this notebook; this one shows it now. Undo goes back.");
    },
    becomes: (notebook, isSplit) => {
      standsAt(notebook);
      state.takeOver(notebook);
      if (isSplit) {
        setSaid(
          "Two tabs changed this notebook at once. Both versions are on the shelf; this tab goes on with its own.",
        );
      }
    },
    nowMs: () => Date.now(),
  });
  createEffect(() => keeper.keep(state.now()));
  createEffect(() => state.canUndo() && askToPersist());
  onCleanup(keeper.close);

  const notebook = state.now;
  const isOwn = () => state.canUndo() || props.opened.isNew === true;
  const { saveNotebook } = makeLeaving(keeper.state, notebook, isOwn);
  const title = createMemo(() => notebook().title);
  createEffect(() => {
    document.title = `${title()} · duskline`;
  });
  // Of the same days, the old ones: ruler and frames depend on them.
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

  const acts = entryActs(state, setSaid);
  onMount(() => props.waits && results.stop());
  undoByKeys(state);
  onMount(() => document.addEventListener("scroll", tellFirstAnswer, { once: true, passive: true }));
  onCleanup(() => document.removeEventListener("scroll", tellFirstAnswer));

  const take = async (file: File, weatherFor = leadOf(notebook())) => {
    const { takeFileInto } = await import("./takeFile.ts");
    const taken = await takeFileInto(file, props.store, notebook(), weatherFor);
    const why = taken.notebook === null ? null : state.act(taken.notebook);
    setSaid(why === null ? taken.sentences.join(" ") : `${file.name} is not taken in.`);
  };
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
        <SheetHead
          state={state}
          page={page}
          days={days()}
          isWorking={isWorking()}
          onSave={saveNotebook}
          onOpen={(file) => void take(file)}
          onSay={setSaid}
        />
        <AnswerBlock answer={answer()} title={notebook().title} hasTrouble={hasTrouble()} />
        <SheetState kept={keeper.state()} said={said()} onSave={saveNotebook} />
        <Show when={props.opened.partly}>{(partly) => <Missing of={partly()} store={props.store} />}</Show>
        <WorkLine results={results} isLongWork={isLongWork()} isKept={keeper.state().kind === "kept"} />
        <Show when={isPhone() && page.document(leadId())}>
          {(document) => (
            <div class="plan-place" id="planFields" classList={{ "plan-open": isPlanOpen() }}>
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
          {(at) => <RulerBar page={page} days={days()!} scale={at()} reading={reading()} />}
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
        <SheetFoot notebook={notebook()} onChange={(next) => void state.act(next)} />
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
