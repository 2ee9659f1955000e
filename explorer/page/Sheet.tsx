import { createEffect, createMemo, createSignal, lazy, onCleanup, onMount, Show, Suspense, untrack } from "solid-js";
import { readingAt } from "../../engine/answers/run/readingAt.ts";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import { leadOf } from "../../engine/notebook/asked.ts";
import { headlineOf } from "../../engine/notebook/headlineOf.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { makeNotebook } from "../notebook/makeNotebook.ts";
import { tellFirstAnswer } from "../parts/firstAnswer.ts";
import { makeLasting } from "../parts/makeLasting.ts";
import { makeWidth } from "../parts/makeWidth.ts";
import { NotMade } from "../parts/NotMade.tsx";
import { PrintEnd } from "../report/PrintEnd.tsx";
import type { Desk } from "../results/desk.ts";
import { makeResults } from "../results/makeResults.ts";
import type { Held, NotebookStore } from "../store/notebookStore.ts";
import { AnswerBlock } from "./AnswerBlock.tsx";
import { entryActs } from "./entryActs.ts";
import { FileDrop } from "./FileDrop.tsx";
import { keepSheet } from "./keepSheet.ts";
import type { ReadPartly } from "./Missing.tsx";
import { makeLeaving } from "./makeLeaving.ts";
import { makePage } from "./makePage.ts";
import { makeSheetLines } from "./makeSheetLines.ts";
import { PhoneBar } from "./PhoneBar.tsx";
import { PhonePlan } from "./PhonePlan.tsx";
import { RulerBar } from "./RulerBar.tsx";
import { SheetEntries } from "./SheetEntries.tsx";
import { SheetFoot } from "./SheetFoot.tsx";
import { SheetHead } from "./SheetHead.tsx";
import { SheetIndex } from "./SheetIndex.tsx";
import { SheetState, WorkLine } from "./SheetState.tsx";
import { undoByKeys } from "./undoByKeys.ts";
import { whyLinked } from "./whyLink.ts";

const WhyPanel = lazy(async () => ({ default: (await import("./WhyPanel.tsx")).WhyPanel }));
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
  // Before the address is set to the notebook's own.
  const linked = whyLinked(location.search);
  const state = makeNotebook(props.opened.notebook);
  const results = makeResults(props.desk, () => untrack(state.now).weatherFiles);
  const sheet = makeWidth();
  const { page, lead, viewPx } = makePage(state, results, sheet.width, (id, file) => void take(file, id));
  const [said, setSaid] = createSignal("");
  const [isPlanOpen, setPlanOpen] = createSignal(false);
  const kept = keepSheet(props.store, props.opened, state, setSaid);
  const notebook = state.now;
  const isOwn = () => state.canUndo() || props.opened.isNew === true;
  const { saveNotebook } = makeLeaving(kept, notebook, isOwn);
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
  const lines = makeSheetLines(page, notebook, isWorking, isLongWork);
  const hasTrouble = () => lines().some(({ state }) => state === "attention");
  const reading = createMemo(() => {
    const picture = lead();
    const ms = page.readingMs() ?? (isPhone() ? (picture?.verdict.lowestMs ?? null) : null);
    return picture === null || ms === null ? null : readingAt(picture, ms);
  });

  onMount(() => linked !== null && page.scenario(linked.scenario) !== null && page.askWhy(linked));
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
        <SheetState kept={kept()} said={said()} onSave={saveNotebook} />
        <Show when={props.opened.partly}>{(partly) => <Missing of={partly()} store={props.store} />}</Show>
        <WorkLine results={results} isLongWork={isLongWork()} isKept={kept().kind === "kept"} />
        <Show when={isPhone()}>
          <PhonePlan page={page} scenario={leadId()} isOpen={isPlanOpen()} />
        </Show>
        <Show when={days() !== null && scale()}>
          {(at) => <RulerBar page={page} days={days()!} scale={at()} reading={reading()} />}
        </Show>
        <SheetEntries lines={lines()} page={page} days={days()} scale={scale()} acts={acts} />
        <PrintEnd page={page} />
        <SheetFoot notebook={notebook()} onChange={(next) => void state.act(next)} />
      </main>
      <Show when={page.why()}>
        {(of) => (
          <Suspense>
            <WhyPanel page={page} of={of()} />
          </Suspense>
        )}
      </Show>
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

/** Whether two runs lie on the same ruler, under the same nights and quiet hours. */
function isSameDays(a: RunPicture | null, b: RunPicture | null): boolean {
  const of = (picture: RunPicture | null) => picture && [picture.ruler, picture.nights, picture.quiet];
  return JSON.stringify(of(a)) === JSON.stringify(of(b));
}
