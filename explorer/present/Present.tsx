import { createMemo, createResource, createSignal, onMount, Show } from "solid-js";
import type { ReportPage } from "../../engine/report/reportPage.ts";
import { type Tells, tellsOf } from "../../engine/report/tellsOf.ts";
import { layPatterns } from "../charts/layPatterns.ts";
import { SaidWords } from "../parts/SaidWords.tsx";
import { PointedChart } from "./PointedChart.tsx";
import { type Slide, slidesOf } from "./slides.ts";
import "./present.css";

const HOUR_MS = 3_600_000;
/** A finger that moves farther than this along the slide turns it. */
const SWIPE_PX = 60;
/** A sentence of more letters takes smaller type. */
const LONG_SENTENCE = 150;

/** The notebook as slides, once what tells its entries is fetched; what is there goes on being shown while another kind's is. */
export function Present(props: { page: ReportPage; onClose: () => void }) {
  const [tells] = createResource(() => props.page.notebook(), tellsOf);
  return (
    <Show when={tells.latest}>{(ready) => <Slides page={props.page} tells={ready()} onClose={props.onClose} />}</Show>
  );
}

/** Slides over the whole window: arrow keys, swipes or the marks at the foot turn them; Escape ends it. */
function Slides(props: { page: ReportPage; tells: Tells; onClose: () => void }) {
  let dialog!: HTMLDialogElement;
  const slides = createMemo((before: readonly Slide[]) => {
    const isTold = props.page.notebook().entries.every(({ kind }) => props.tells.has(kind));
    return isTold ? slidesOf(props.page, props.tells) : before;
  }, []);
  const [at, setAt] = createSignal(0);
  const [ms, setMs] = createSignal<number | null>(null);
  const slide = () => slides()[Math.min(at(), slides().length - 1)]!;
  const isLong = () => slide().words.reduce((sum, { text }) => sum + text.length, 0) > LONG_SENTENCE;
  const go = (to: number) => {
    const next = Math.max(0, Math.min(slides().length - 1, to));
    if (next === at()) return;
    setMs(null);
    setAt(next);
  };
  const point = (hours: number) => {
    const chart = slide().chart;
    if (chart === null) return;
    const { startMs, stepMs, steps } = chart.time;
    const now = ms() ?? startMs + (hours > 0 ? -HOUR_MS : HOUR_MS + steps * stepMs);
    setMs(Math.max(startMs, Math.min(startMs + steps * stepMs, now + hours * HOUR_MS)));
  };
  onMount(() => {
    layPatterns();
    dialog.showModal();
    dialog.focus();
  });

  function press(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const isOnButton = event.target instanceof HTMLButtonElement || event.target instanceof HTMLAnchorElement;
    if (isOnButton && (event.key === " " || event.key === "Enter")) return;
    const turns: Record<string, () => void> = {
      ArrowRight: () => (event.shiftKey ? point(1) : go(at() + 1)),
      ArrowLeft: () => (event.shiftKey ? point(-1) : go(at() - 1)),
      ArrowUp: () => point(1),
      ArrowDown: () => point(-1),
      PageDown: () => go(at() + 1),
      PageUp: () => go(at() - 1),
      " ": () => go(at() + (event.shiftKey ? -1 : 1)),
      Home: () => go(0),
      End: () => go(slides().length - 1),
    };
    const turn = turns[event.key];
    if (turn === undefined) return;
    // A slide without a chart may have more lines than fit; the vertical keys then scroll it.
    if (slide().chart === null && (event.key === "ArrowUp" || event.key === "ArrowDown")) return;
    event.preventDefault();
    turn();
  }
  let touchX: number | null = null;
  const start = (event: PointerEvent) => {
    touchX = event.pointerType === "mouse" ? null : event.clientX;
  };
  const end = (event: PointerEvent) => {
    if (touchX === null) return;
    const moved = event.clientX - touchX;
    touchX = null;
    if (Math.abs(moved) > SWIPE_PX) {
      setMs(null);
      go(at() + (moved < 0 ? 1 : -1));
    }
  };
  return (
    <dialog
      ref={dialog}
      class="present"
      tabIndex={-1}
      aria-label={`Slides of ${props.page.notebook().title}`}
      onKeyDown={press}
      onPointerDown={start}
      onPointerUp={end}
      onClose={() => props.onClose()}
    >
      <div class="slide" classList={{ "slide-first": at() === 0, "slide-charted": slide().chart !== null }}>
        <h2 class="slide-words" classList={{ "slide-words-long": isLong() }} aria-live="polite">
          <Show when={slide().words.length > 0} fallback={slide().title}>
            <SaidWords words={slide().words} />
          </Show>
        </h2>
        <Show when={slide().chart} keyed>
          {(chart) => <PointedChart chart={chart} ms={ms()} onPoint={setMs} />}
        </Show>
        <Show when={slide().body} keyed>
          {(body) => (
            // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
            <section class="slide-body" tabIndex={0} aria-label={slide().title} innerHTML={body.text} />
          )}
        </Show>
        <SlideFoot
          letter={slide().letter}
          title={slide().title}
          at={at()}
          of={slides().length}
          onGo={go}
          onClose={() => dialog.close()}
        />
      </div>
    </dialog>
  );
}

/** Which slide it is, and how to go on. */
function SlideFoot(props: {
  letter: string;
  title: string;
  at: number;
  of: number;
  onGo: (to: number) => void;
  onClose: () => void;
}) {
  return (
    <footer class="slide-foot">
      <p>
        <strong>{props.letter}</strong> {props.title}
      </p>
      <p class="slide-turn">
        <button
          type="button"
          class="turn"
          aria-label="Slide before"
          disabled={props.at === 0}
          onClick={() => props.onGo(props.at - 1)}
        >
          ◂
        </button>
        <span>
          {props.at + 1} of {props.of}
        </span>
        <button
          type="button"
          class="turn"
          aria-label="Next slide"
          disabled={props.at === props.of - 1}
          onClick={() => props.onGo(props.at + 1)}
        >
          ▸
        </button>
        <button type="button" class="act" onClick={() => props.onClose()}>
          Close
        </button>
      </p>
    </footer>
  );
}
