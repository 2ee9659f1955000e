import { createEffect, Index, type JSX, Show } from "solid-js";
import type { AxisTitle } from "../../engine/drawing/axisTitle.ts";
import type { EndLabel } from "../../engine/drawing/endLabels.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";
import type { TimePicture } from "../../engine/ruler/timePicture.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";
import { fadesWhile } from "../parts/fadesWhile.ts";
import { StrataLabels } from "./StrataLabels.tsx";

const HOUR_MS = 3_600_000;

/** Charts that hang from the ruler: nights without a break, axis at the left, names at the right, one instant read down all. */
export function RulerChart(props: {
  page: NotebookPage;
  time: TimePicture;
  scale: TimeScale;
  heightPx: number;
  axis: readonly AxisTitle[];
  labels: readonly EndLabel[];
  /** What the picture shows, as a sentence. */
  label: string;
  /** What stands there at an instant, as a sentence. */
  words: (ms: number) => string;
  faded: boolean;
  children: JSX.Element;
}) {
  const room = () => props.page.room();
  const endMs = () => props.time.startMs + props.time.steps * props.time.stepMs;
  const stepMs = () => Math.max(900_000, props.time.stepMs);
  const snap = (ms: number) => {
    const { startMs } = props.time;
    return Math.min(endMs(), Math.max(startMs, startMs + Math.round((ms - startMs) / stepMs()) * stepMs()));
  };
  /** The instant that is read, where it lies within the event. */
  const read = () => {
    const ms = props.page.readingMs();
    return ms === null || ms < props.time.startMs || ms > endMs() ? null : ms;
  };
  let scroller!: HTMLDivElement;
  let reader!: HTMLDivElement;
  createEffect(() => {
    if (Math.abs(scroller.scrollLeft - props.page.scrollPx()) > 1) scroller.scrollLeft = props.page.scrollPx();
  });
  const readPointer = (event: PointerEvent) => {
    if (event.pointerType === "touch" && event.buttons === 0) return;
    props.page.read(snap(props.scale.ms(event.clientX - reader.getBoundingClientRect().left)));
  };
  function press(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "Escape") props.page.read(null);
    const now = read() ?? props.time.startMs;
    const step = event.shiftKey ? 6 * HOUR_MS : stepMs();
    const night = props.time.nights.map(({ startMs }) => snap(startMs)).find((startMs) => startMs > now);
    const to: Record<string, number> = {
      ArrowRight: now + step,
      ArrowUp: now + step,
      ArrowLeft: now - step,
      ArrowDown: now - step,
      Home: props.time.startMs,
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
      <svg class="strata-axis" width={room().axisPx} height={props.heightPx} aria-hidden="true">
        <Index each={props.axis}>
          {(axis) => (
            <g>
              <text class="title" x={room().isPhone ? 6 : room().axisPx} y={axis().titleY}>
                {axis().title}
                <Show when={!room().isPhone}>
                  <tspan class="how" dx={14}>
                    {axis().how}
                  </tspan>
                </Show>
              </text>
              <Index each={axis().values}>
                {(value) => (
                  <text class="axis-value" x={room().axisPx - 10} y={value().y + 5} text-anchor="end">
                    {value().text}
                  </text>
                )}
              </Index>
            </g>
          )}
        </Index>
      </svg>
      <div
        class="section-scroll"
        ref={scroller}
        onScroll={(event) => props.page.scroll(event.currentTarget.scrollLeft, event.currentTarget.clientWidth)}
      >
        <div class="section-plot" style={{ width: `${props.scale.widthPx}px` }}>
          <svg class="bands" width={props.scale.widthPx} height={props.heightPx} role="img" aria-label={props.label}>
            <Index each={props.time.nights}>
              {(night) => (
                <rect
                  class="night"
                  x={props.scale.x(night().startMs)}
                  width={props.scale.x(night().endMs) - props.scale.x(night().startMs)}
                  height={props.heightPx}
                />
              )}
            </Index>
            <Index each={props.time.ruler.days.slice(1)}>
              {(day) => (
                <line
                  class="midnight"
                  x1={props.scale.x(day().startMs)}
                  x2={props.scale.x(day().startMs)}
                  y1={0}
                  y2={props.heightPx}
                />
              )}
            </Index>
            <Index each={props.axis.flatMap((axis) => axis.values)}>
              {(value) => (
                <line
                  class="axis-line"
                  x1={0}
                  x2={props.scale.widthPx}
                  y1={Math.round(value().y) + 0.5}
                  y2={Math.round(value().y) + 0.5}
                />
              )}
            </Index>
            {props.children}
            <Show when={read()}>
              {(ms) => (
                <g class="reading">
                  <line x1={props.scale.x(ms())} x2={props.scale.x(ms())} y1={0} y2={props.heightPx} />
                </g>
              )}
            </Show>
          </svg>
          <div
            class="reader"
            ref={reader}
            role="slider"
            tabIndex={0}
            aria-label={`${props.axis[0]?.title ?? "Chart"}: read an instant with the arrow keys, N for the next night`}
            aria-valuemin={0}
            aria-valuemax={(endMs() - props.time.startMs) / 60_000}
            aria-valuenow={((read() ?? props.time.startMs) - props.time.startMs) / 60_000}
            aria-valuetext={read() === null ? "nothing read yet" : props.words(read()!)}
            onPointerMove={readPointer}
            onPointerDown={readPointer}
            onPointerLeave={(event) => {
              if (event.pointerType === "mouse" && document.activeElement !== reader) props.page.read(null);
            }}
            onBlur={() => !room().isPhone && props.page.read(null)}
            onKeyDown={press}
          />
        </div>
        <Show when={room().labelsPx > 0}>
          <StrataLabels
            labels={props.labels}
            layout={{ heightPx: props.heightPx }}
            scale={props.scale}
            widthPx={room().labelsPx}
          />
        </Show>
      </div>
    </div>
  );
}
