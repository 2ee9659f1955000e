import { type Accessor, createEffect, Show } from "solid-js";
import type { Reading } from "../../engine/answers/run/readingAt.ts";
import { ampHours } from "../../engine/words/numbers.ts";
import { Drawn } from "./Drawn.tsx";
import { DrawnAxis, DrawnNames, DrawnPlot } from "./DrawnPieces.tsx";
import { makeStrataDrawn, type StrataOf } from "./makeStrataDrawn.ts";
import { Reader } from "./Reader.tsx";
import { ReadingLine } from "./ReadingLine.tsx";
import { ReserveGrip } from "./ReserveGrip.tsx";

/** Room that values need beside the reading line. */
const VALUES_PX = 190;
/** How near to the view's edge a reading may come before the view follows it. */
const MARGIN_PX = 72;

/** The strata with everything one can do to them: read an instant, move the reserve, scroll through time. */
export function Strata(
  props: StrataOf & {
    readonly onReserve: (percent: number) => void;
    readonly onSettle: () => void;
    readonly reading: Reading | null;
    readonly onRead: (ms: number | null) => void;
    readonly onWhy: (ms: number) => void;
    readonly scroll: Accessor<number>;
    /** Whether there is more time than fits, so that the view follows what is read. */
    readonly scrolls: boolean;
    readonly onScroll: (px: number, viewPx: number) => void;
  },
) {
  const drawn = makeStrataDrawn(
    props,
    () => props.scroll(),
    () => props.reading?.ms ?? null,
  );
  const { layout, scale, drawing } = drawn;
  const flips = () => {
    if (props.reading === null) return false;
    const x = scale().x(props.reading.ms);
    if (props.scrolls) return x - props.scroll() > (scroller?.clientWidth ?? 0) / 2;
    return x > scale().widthPx - VALUES_PX;
  };

  let scroller!: HTMLDivElement;
  createEffect(() => {
    if (Math.abs(scroller.scrollLeft - props.scroll()) > 1) scroller.scrollLeft = props.scroll();
  });
  // A reading that leaves the view takes the view along.
  createEffect(() => {
    if (props.reading === null || !props.scrolls) return;
    const x = scale().x(props.reading.ms);
    const view = scroller.clientWidth;
    const margin = Math.min(MARGIN_PX, view / 4);
    if (x < scroller.scrollLeft + margin) scroller.scrollLeft = x - margin;
    if (x > scroller.scrollLeft + view - margin) scroller.scrollLeft = x - view + margin;
  });

  return (
    <div class="section">
      <DrawnAxis drawing={drawing()} />
      <div
        class="section-scroll"
        ref={scroller}
        onScroll={(event) => props.onScroll(event.currentTarget.scrollLeft, event.currentTarget.clientWidth)}
      >
        <div class="section-plot" style={{ width: `${scale().widthPx}px` }}>
          <DrawnPlot drawing={drawing()} class="strata">
            <Drawn of={drawn.chargeDrawn()} />
            <Drawn of={drawn.notesDrawn()} />
            <Show when={props.reading}>
              {(reading) => (
                <ReadingLine
                  picture={props.picture}
                  reading={reading()}
                  layout={layout()}
                  scale={scale()}
                  flips={flips()}
                  spelledOut={!props.room.isPhone}
                />
              )}
            </Show>
          </DrawnPlot>
          <Reader
            label="Read an instant: arrow keys a quarter of an hour, with Shift six hours, N the next night"
            time={props.picture}
            scale={scale()}
            ms={props.reading?.ms ?? null}
            words={props.reading?.words ?? ""}
            firstMs={props.picture.verdict.lowestMs}
            readsOnFocus={true}
            isPhone={props.room.isPhone}
            onRead={props.onRead}
            onWhy={props.onWhy}
          />
          <ReserveGrip
            percent={props.reservePercent}
            ah={ampHours((props.reservePercent / 100) * props.picture.fullAh)}
            y={layout().charge.y(props.reservePercent / 100)}
            zeroY={layout().charge.bottom}
            fullY={layout().charge.top}
            x={drawn.gripX()}
            above={drawn.reserveName().above}
            onMove={props.onReserve}
            onSettle={props.onSettle}
          />
        </div>
        <DrawnNames drawing={drawing()} />
      </div>
    </div>
  );
}
