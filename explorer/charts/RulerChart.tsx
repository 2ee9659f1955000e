import { createEffect, Show } from "solid-js";
import type { RulerDrawing } from "../../engine/drawing/rulerDrawing.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";
import { fadesWhile } from "../parts/fadesWhile.ts";
import { DrawnAxis, DrawnNames, DrawnPlot } from "./DrawnPieces.tsx";

const HOUR_MS = 3_600_000;

/** A drawing on the ruler in its place on the page, with one instant read down all its charts. */
export function RulerChart(props: {
  page: NotebookPage;
  drawing: RulerDrawing;
  /** What stands there at an instant, as a sentence. */
  words: (ms: number) => string;
  faded: boolean;
}) {
  const time = () => props.drawing.time;
  const scale = () => props.drawing.scale;
  const endMs = () => time().startMs + time().steps * time().stepMs;
  const stepMs = () => Math.max(900_000, time().stepMs);
  const snap = (ms: number) => {
    const { startMs } = time();
    return Math.min(endMs(), Math.max(startMs, startMs + Math.round((ms - startMs) / stepMs()) * stepMs()));
  };
  /** The instant that is read, where it lies within the event. */
  const read = () => {
    const ms = props.page.readingMs();
    return ms === null || ms < time().startMs || ms > endMs() ? null : ms;
  };
  let scroller!: HTMLDivElement;
  let reader!: HTMLDivElement;
  createEffect(() => {
    if (Math.abs(scroller.scrollLeft - props.page.scrollPx()) > 1) scroller.scrollLeft = props.page.scrollPx();
  });
  const readPointer = (event: PointerEvent) => {
    if (event.pointerType === "touch" && event.buttons === 0) return;
    props.page.read(snap(scale().ms(event.clientX - reader.getBoundingClientRect().left)));
  };
  function press(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "Escape") props.page.read(null);
    const now = read() ?? time().startMs;
    const step = event.shiftKey ? 6 * HOUR_MS : stepMs();
    const night = time()
      .nights.map(({ startMs }) => snap(startMs))
      .find((startMs) => startMs > now);
    const to: Record<string, number> = {
      ArrowRight: now + step,
      ArrowUp: now + step,
      ArrowLeft: now - step,
      ArrowDown: now - step,
      Home: time().startMs,
      End: endMs(),
      n: night ?? now,
    };
    const ms = to[event.key];
    if (ms === undefined) return;
    event.preventDefault();
    props.page.read(snap(ms));
  }
  return (
    <div class="section" ref={fadesWhile(() => props.faded)}>
      <DrawnAxis drawing={props.drawing} />
      <div
        class="section-scroll"
        ref={scroller}
        onScroll={(event) => props.page.scroll(event.currentTarget.scrollLeft, event.currentTarget.clientWidth)}
      >
        <div class="section-plot" style={{ width: `${scale().widthPx}px` }}>
          <DrawnPlot drawing={props.drawing} class="bands">
            <Show when={read()}>
              {(ms) => (
                <g class="reading">
                  <line x1={scale().x(ms())} x2={scale().x(ms())} y1={0} y2={props.drawing.plotPx} />
                </g>
              )}
            </Show>
          </DrawnPlot>
          <div
            class="reader"
            ref={reader}
            role="slider"
            tabIndex={0}
            aria-label={`${props.drawing.title}: read an instant with the arrow keys, N for the next night`}
            aria-valuemin={0}
            aria-valuemax={(endMs() - time().startMs) / 60_000}
            aria-valuenow={((read() ?? time().startMs) - time().startMs) / 60_000}
            aria-valuetext={read() === null ? "nothing read yet" : props.words(read()!)}
            onPointerMove={readPointer}
            onPointerDown={readPointer}
            onPointerLeave={(event) => {
              if (event.pointerType === "mouse" && document.activeElement !== reader) props.page.read(null);
            }}
            onBlur={() => !props.page.room().isPhone && props.page.read(null)}
            onKeyDown={press}
          />
        </div>
        <DrawnNames drawing={props.drawing} />
      </div>
    </div>
  );
}
