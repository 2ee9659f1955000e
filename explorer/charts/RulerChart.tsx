import { createEffect, Show } from "solid-js";
import type { RulerDrawing } from "../../engine/drawing/rulerDrawing.ts";
import { endMs } from "../../engine/ruler/readingTime.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";
import { fadesWhile } from "../parts/fadesWhile.ts";
import { DrawnAxis, DrawnNames, DrawnPlot } from "./DrawnPieces.tsx";
import { Reader } from "./Reader.tsx";

/** A drawing on the ruler in its place on the page, with one instant read down all its charts. */
export function RulerChart(props: {
  page: NotebookPage;
  drawing: RulerDrawing;
  /** What stands there at an instant, as a sentence. */
  words: (ms: number) => string;
  faded: boolean;
  onWhy?: ((ms: number) => void) | undefined;
}) {
  const time = () => props.drawing.time;
  const scale = () => props.drawing.scale;
  /** The instant that is read, where it lies within the event. */
  const read = () => {
    const ms = props.page.readingMs();
    return ms === null || ms < time().startMs || ms > endMs(time()) ? null : ms;
  };
  let scroller!: HTMLDivElement;
  createEffect(() => {
    if (Math.abs(scroller.scrollLeft - props.page.scrollPx()) > 1) scroller.scrollLeft = props.page.scrollPx();
  });
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
          <Reader
            label={`${props.drawing.title}: read an instant with the arrow keys, N for the next night`}
            time={time()}
            scale={scale()}
            ms={read()}
            words={read() === null ? "" : props.words(read()!)}
            firstMs={time().startMs}
            readsOnFocus={false}
            isPhone={props.page.room().isPhone}
            onRead={props.page.read}
            onWhy={props.onWhy}
          />
        </div>
        <DrawnNames drawing={props.drawing} />
      </div>
    </div>
  );
}
