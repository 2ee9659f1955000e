import { createMemo, createSignal, type JSX, onCleanup, onMount, Show } from "solid-js";
import type { ScenarioInput, TaskPool } from "../../engine/index.ts";
import { FrameBar } from "../charts/FrameBar.tsx";
import { readingAt } from "../charts/readingAt.ts";
import { Strata } from "../charts/Strata.tsx";
import { endMs } from "../charts/strataPaths.ts";
import { nightWords, TimeRuler, zoneWords } from "../charts/TimeRuler.tsx";
import { type TimeScale, timeScale } from "../charts/timeScale.ts";
import { daysCsv, ledgerCsv, strataCsv } from "../download/csv.ts";
import { fileName, saveFile } from "../download/saveFile.ts";
import { svgFile } from "../download/svgFile.ts";
import { Cautions } from "../entries/Cautions.tsx";
import { DaysTable } from "../entries/DaysTable.tsx";
import { LedgerTable } from "../entries/LedgerTable.tsx";
import { StrataTable } from "../entries/StrataTable.tsx";
import type { Workshop } from "../picture/makeTracer.ts";
import type { RunPicture } from "../picture/runPicture.ts";
import { switchableVariants } from "../plan/plan.ts";
import { dateSpan } from "../time/localClock.ts";
import { answerOf } from "../words/answerOf.ts";
import { energy, percent } from "../words/numbers.ts";
import { AnswerSentence } from "./AnswerSentence.tsx";
import { makePlanState } from "./makePlanState.ts";
import { makeSkies } from "./makeSkies.ts";
import { LIGHT_WORDS, makeTheme } from "./makeTheme.ts";
import { makeWidth } from "./makeWidth.ts";
import { PhoneBar } from "./PhoneBar.tsx";
import { PlanFields } from "./PlanFields.tsx";
import { SkiesCaption } from "./SkiesCaption.tsx";

/** A sheet narrower than this is read with a thumb. */
const PHONE_PX = 700;

/** The page: the answer, the plan in one line, the ruler, and what hangs from it. */
export function Explorer(props: { document: ScenarioInput; workshop: Workshop; pool: TaskPool }) {
  const state = makePlanState(props.document, props.workshop);
  const skies = makeSkies(props.pool, () => (state.isStale() ? null : (state.shown()?.scenario ?? null)));
  const theme = makeTheme();
  const sheet = makeWidth();
  const [readMs, setReadMs] = createSignal<number | null>(null);
  const [scroll, setScroll] = createSignal({ px: 0, viewPx: 0 });
  const [isPlanOpen, setPlanOpen] = createSignal(false);
  const [isTableOpen, setTableOpen] = createSignal(false);

  const isPhone = () => sheet.width() < PHONE_PX;
  const axisPx = () => (isPhone() ? 40 : 64);
  const labelsPx = () => (sheet.width() >= 1100 ? 214 : 192);
  const roomPx = () => sheet.width() - axisPx() - labelsPx();
  const scale = createMemo((): TimeScale | null => {
    const picture = state.shown()?.picture;
    if (picture === undefined) return null;
    return timeScale(picture.ruler, isPhone() ? null : Math.min(864, roomPx()));
  });
  /** Whether there is more time than the sheet is wide. */
  const scrolls = () => isPhone() || (scale()?.widthPx ?? 0) > Math.max(864 + 24, roomPx() + 24);
  const scrollPx = () => (scrolls() ? scroll().px : 0);
  /** Blanks start on midnights: one day's column each, or as many or as great a part of one as a blank needs. */
  const fieldPx = () => {
    const time = scale();
    if (time === null) return 216;
    const dayPx = 24 * time.pxPerHour;
    return dayPx > 260 ? dayPx / Math.round(dayPx / 216) : dayPx * Math.ceil(170 / dayPx);
  };
  const ready = createMemo(() => {
    const shown = state.shown();
    const time = scale();
    return shown === null || time === null ? null : { picture: shown.picture, scale: time };
  });
  const reading = createMemo(() => {
    const picture = state.shown()?.picture;
    const ms = readMs() ?? (isPhone() ? (picture?.verdict.lowestMs ?? null) : null);
    return picture === undefined || ms === null ? null : readingAt(picture, ms);
  });
  const answer = createMemo(() => {
    const shown = state.shown();
    if (shown === null) return null;
    const { picture, plan } = shown;
    const withWords = switchableVariants(props.document)
      .filter((variant) => plan.variants.includes(variant.id))
      .map((variant) => variant.name);
    return answerOf({
      verdict: picture.verdict,
      ruler: picture.ruler,
      endMs: endMs(picture),
      reserveShare: picture.reserveShare,
      solarWh: picture.ledger.solarWh,
      spilledWh: picture.ledger.spilledWh,
      wantedWh: picture.ledger.wantedWh,
      withWords,
    });
  });
  const reservePercent = () => {
    const { reservePercent } = state.plan();
    return typeof reservePercent === "number" && reservePercent >= 0 && reservePercent <= 100
      ? reservePercent
      : (state.shown()?.picture.reserveShare ?? 0) * 100;
  };

  const undoKeys = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    event.preventDefault();
    if (key === "y" || event.shiftKey) state.redo();
    else state.undo();
  };
  onMount(() => document.addEventListener("keydown", undoKeys));
  onCleanup(() => document.removeEventListener("keydown", undoKeys));

  const saveSvg = () => {
    const find = (selector: string) => document.querySelector<SVGElement>(selector);
    const [ruler, axis, strata] = [find(".ruler-drawing"), find(".strata-axis"), find(".strata")];
    if (ruler === null || axis === null || strata === null) return;
    saveFile(
      `${fileName(props.document.name)}.svg`,
      "image/svg+xml",
      svgFile(ruler, axis, strata, find(".strata-labels")),
    );
  };
  const saveCsv = (what: string, text: string) =>
    saveFile(`${fileName(props.document.name)}-${what}.csv`, "text/csv", text);

  return (
    <div
      class="page"
      classList={{
        "page-phone": isPhone(),
        "page-planning": isPlanOpen(),
        "page-scrolls": scrolls(),
        stale: state.isStale(),
      }}
    >
      <SheetIndex picture={state.shown()?.picture ?? null} stale={state.isStale()} problems={state.problems().length} />
      <main class="sheet" ref={sheet.ref}>
        <header class="top">
          <p class="sheet-name">
            <strong>{props.document.name}</strong>
            <Show when={ready()}>{(now) => <span class="dates">{dateSpan(now().picture.ruler)}</span>}</Show>
          </p>
          <div class="acts">
            <button type="button" class="act" disabled={!state.canUndo()} onClick={() => state.undo()}>
              Undo
            </button>
            <button type="button" class="act" disabled={!state.canRedo()} onClick={() => state.redo()}>
              Redo
            </button>
            <button type="button" class="act" onClick={() => theme.turn()}>
              Light: {LIGHT_WORDS[theme.light()]}
            </button>
          </div>
        </header>
        <div class="answer-block" aria-live="polite" aria-atomic="true">
          <Show
            when={answer()}
            fallback={
              <h1 class="answer">
                {state.problems().length > 0 ? "This plan cannot be worked out as it stands." : "Working it out…"}
              </h1>
            }
          >
            {(said) => <AnswerSentence answer={said()} />}
          </Show>
        </div>
        <Show when={answer()}>
          <SkiesCaption skies={skies()} />
        </Show>
        <div
          class="plan-place"
          id="plan"
          classList={{ "plan-open": isPlanOpen() }}
          style={{ "--field": `${fieldPx()}px` }}
        >
          <PlanFields state={state} />
        </div>
        <Show when={ready()}>
          {(now) => (
            <>
              <div class="ruler">
                <div class="ruler-view">
                  <div
                    class="ruler-moving"
                    style={{ transform: `translateX(${-scrollPx()}px)`, width: `${now().scale.widthPx}px` }}
                  >
                    <TimeRuler picture={now().picture} scale={now().scale} />
                    <Show when={reading()}>
                      {(at) => (
                        <span
                          class="tag"
                          classList={{ "tag-end": now().scale.x(at().ms) > now().scale.widthPx - 70 }}
                          style={{ left: `${now().scale.x(at().ms)}px` }}
                        >
                          {at().when}
                        </span>
                      )}
                    </Show>
                  </div>
                </div>
                <p class="ruler-side">
                  {zoneWords(now().picture.ruler)}
                  <br />
                  {nightWords(now().picture)}
                </p>
              </div>
              <section class="entry" aria-labelledby="entry-a" id="a">
                <Heading letter="A" id="entry-a" title="Will it hold?" sub={skyWords(state.plan().sky)}>
                  <button
                    type="button"
                    class="act"
                    aria-expanded={isTableOpen()}
                    aria-controls="strata-table"
                    onClick={() => setTableOpen(!isTableOpen())}
                  >
                    Table
                  </button>
                  <button type="button" class="act" onClick={() => saveCsv("steps", strataCsv(now().picture))}>
                    CSV
                  </button>
                  <button type="button" class="act" onClick={saveSvg}>
                    SVG
                  </button>
                </Heading>
                <Strata
                  picture={now().picture}
                  before={state.before()}
                  scale={now().scale}
                  isPhone={isPhone()}
                  chargePx={isPhone() ? (isPlanOpen() ? 128 : 176) : 196}
                  axisPx={axisPx()}
                  labelsPx={labelsPx()}
                  label={`Charge, sun and loads over time. ${now().picture.verdict.sentences.join(" ")}`}
                  reservePercent={reservePercent()}
                  onReserve={(value) => state.edit("reservePercent", { reservePercent: value })}
                  onSettle={state.settle}
                  reading={reading()}
                  onRead={setReadMs}
                  scroll={scrollPx}
                  scrolls={scrolls()}
                  onScroll={(px, viewPx) => setScroll({ px, viewPx })}
                />
                <div id="strata-table" class="margin-left">
                  <Show when={isTableOpen()}>
                    <StrataTable picture={now().picture} />
                  </Show>
                </div>
              </section>
              <Entry
                letter="B"
                id="b"
                title="The same days in figures"
                now={now()}
                scrollPx={scrollPx()}
                acts={
                  <button type="button" class="act" onClick={() => saveCsv("days", daysCsv(now().picture))}>
                    CSV
                  </button>
                }
              >
                <DaysTable picture={now().picture} />
              </Entry>
              <Entry
                letter="C"
                id="c"
                title="Where the energy went"
                sub={ledgerWords(now().picture)}
                now={now()}
                scrollPx={scrollPx()}
                acts={
                  <button type="button" class="act" onClick={() => saveCsv("loads", ledgerCsv(now().picture))}>
                    CSV
                  </button>
                }
              >
                <LedgerTable picture={now().picture} />
              </Entry>
              <Entry letter="D" id="d" title="What this leaves out, and cautions" now={now()} scrollPx={scrollPx()}>
                <Cautions remarks={now().picture.remarks} />
              </Entry>
            </>
          )}
        </Show>
      </main>
      <Show when={isPhone() && ready() !== null && reading() !== null}>
        <PhoneBar
          picture={ready()!.picture}
          reading={reading()!}
          widthPx={sheet.width()}
          viewMs={[ready()!.scale.ms(scrollPx()), ready()!.scale.ms(scrollPx() + scroll().viewPx)]}
          isPlanOpen={isPlanOpen()}
          onRead={setReadMs}
          onPlan={() => setPlanOpen(!isPlanOpen())}
        />
      </Show>
    </div>
  );
}

function skyWords(sky: string | null): string {
  if (sky === null) return "one run under the sky as written";
  return sky === "typical" ? "one run under a sky typical of the month" : `one run, every day ${sky}`;
}

function ledgerWords({ ledger }: RunPicture): string {
  const { alwaysWh, usedWh } = ledger;
  const always = alwaysWh + usedWh > 0 ? alwaysWh / (alwaysWh + usedWh) : 0;
  return `${energy(alwaysWh + usedWh)} in all, ${percent(always)} of it always on`;
}

function Heading(props: { letter: string; id: string; title: string; sub?: string; children?: JSX.Element }) {
  return (
    <div class="heading">
      <span class="letter" aria-hidden="true">
        {props.letter}
      </span>
      <h2 id={props.id}>
        {props.title}
        <Show when={props.sub}>
          <small>{props.sub}</small>
        </Show>
      </h2>
      <div class="acts">{props.children}</div>
    </div>
  );
}

function Entry(props: {
  letter: string;
  id: string;
  title: string;
  sub?: string;
  now: { picture: RunPicture; scale: TimeScale };
  scrollPx: number;
  acts?: JSX.Element;
  children: JSX.Element;
}) {
  return (
    <section class="entry" aria-labelledby={`entry-${props.id}`} id={props.id}>
      <div class="entry-frame">
        <svg
          width={props.now.scale.widthPx}
          height="8"
          aria-hidden="true"
          style={{ transform: `translateX(${-props.scrollPx}px)` }}
        >
          <FrameBar picture={props.now.picture} scale={props.now.scale} />
        </svg>
      </div>
      <Heading letter={props.letter} id={`entry-${props.id}`} title={props.title} sub={props.sub ?? ""}>
        {props.acts}
      </Heading>
      <div class="margin-left">{props.children}</div>
    </section>
  );
}

/** The entries by letter, with the one-line result and the state of each. */
function SheetIndex(props: { picture: RunPicture | null; stale: boolean; problems: number }) {
  const verdict = () => props.picture?.verdict;
  const holds = () => {
    const said = verdict();
    if (said === undefined) return "working";
    return said.dark ? "goes dark" : `lowest ${percent(said.lowestShare)}`;
  };
  const least = () => {
    const days = props.picture?.days ?? [];
    return days.length === 0 ? "" : `${days.length} ${days.length === 1 ? "day" : "days"}`;
  };
  const largest = () => props.picture?.ledger.loads[0]?.name ?? "";
  const lines = () => [
    { letter: "A", title: "Will it hold?", says: holds() },
    { letter: "B", title: "Days in figures", says: least() },
    { letter: "C", title: "Where it went", says: largest() },
    { letter: "D", title: "Cautions", says: "and what is left out" },
  ];
  return (
    <nav class="index" aria-label="Sheet index">
      <p class="index-title">Sheet index</p>
      <ol>
        {lines().map((line) => (
          <li>
            <a href={`#${line.letter.toLowerCase()}`}>
              <span class="index-letter">{line.letter}</span>
              <span class="index-name">{line.title}</span>
              <span class="index-says">{line.says}</span>
            </a>
          </li>
        ))}
      </ol>
      <p class="state" classList={{ "state-wrong": props.problems > 0 }}>
        <StateGlyph stale={props.stale} wrong={props.problems > 0} />
        {props.problems > 0 ? "a value to put right" : props.stale ? "working" : "fresh"}
      </p>
    </nav>
  );
}

function StateGlyph(props: { stale: boolean; wrong: boolean }) {
  return (
    <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true">
      {props.wrong ? (
        <path class="glyph-wrong" d="M7 1.5L13 12.5H1Z" />
      ) : props.stale ? (
        <circle class="glyph-stale" cx="7" cy="7" r="4.5" />
      ) : (
        <circle class="glyph-fresh" cx="7" cy="7" r="4.5" />
      )}
    </svg>
  );
}
