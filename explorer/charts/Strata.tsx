import { type Accessor, createEffect, createMemo, Show } from "solid-js";
import { chargeLayer, notesLayer } from "../../engine/answers/run/chargeLayer.ts";
import { type ChargeNotesOf, chargeNotes } from "../../engine/answers/run/chargeNotes.ts";
import { powerLayer } from "../../engine/answers/run/powerLayer.ts";
import { nextNight, type Reading, readingStepMs, snapReading } from "../../engine/answers/run/readingAt.ts";
import { reserveNamePlace } from "../../engine/answers/run/reserveNamePlace.ts";
import { runOnRuler } from "../../engine/answers/run/runOnRuler.ts";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import { strataLayout } from "../../engine/answers/run/strataLayout.ts";
import { endMs } from "../../engine/answers/run/strataPaths.ts";
import { isSameScale, timeScale } from "../../engine/drawing/timeScale.ts";
import { ampHours } from "../../engine/words/numbers.ts";
import type { SheetRoom } from "../notebook/notebookPage.ts";
import { Drawn } from "./Drawn.tsx";
import { DrawnAxis, DrawnNames, DrawnPlot } from "./DrawnPieces.tsx";
import { ReadingLine } from "./ReadingLine.tsx";
import { ReserveGrip } from "./ReserveGrip.tsx";

const HOUR_MS = 3_600_000;
const GRIP_LEFT_PX = 20;

export interface StrataProps {
  readonly picture: RunPicture;
  readonly before: RunPicture | null;
  readonly room: SheetRoom;
  readonly reservePercent: number;
  readonly onReserve: (percent: number) => void;
  readonly onSettle: () => void;
  readonly reading: Reading | null;
  readonly onRead: (ms: number | null) => void;
  readonly scroll: Accessor<number>;
  /** Whether there is more time than fits, so that the view follows what is read. */
  readonly scrolls: boolean;
  readonly onScroll: (px: number, viewPx: number) => void;
}

/** The strata with everything one can do to them: read an instant, move the reserve, scroll through time. */
export function Strata(props: StrataProps) {
  const layout = createMemo(() => strataLayout(props.picture, props.room.isPhone ? 160 : 196));
  const scale = createMemo(() => timeScale(props.picture.ruler, props.room.daysPx), undefined, { equals: isSameScale });
  const power = createMemo(() => powerLayer(props.picture, layout(), scale()));
  const drawing = createMemo(() => {
    const { picture, before, room } = props;
    return runOnRuler({ picture, before, layout: layout(), scale: scale(), room }, [power()]);
  });
  const reserveY = () => layout().charge.y(props.reservePercent / 100);
  // On a phone the grip stays in view while time moves beneath it.
  const gripX = () => Math.max(scale().x(props.picture.startMs), props.scroll()) + GRIP_LEFT_PX;
  const flips = () => {
    if (props.reading === null) return false;
    const x = scale().x(props.reading.ms);
    if (props.scrolls) return x - props.scroll() > (scroller?.clientWidth ?? 0) / 2;
    return x > scale().widthPx - 190;
  };
  const reserveAh = () => ampHours((props.reservePercent / 100) * props.picture.fullAh);
  const reserveName = createMemo(() =>
    reserveNamePlace(props.picture, layout().charge, scale(), props.reservePercent / 100, gripX()),
  );
  // Apart from the rest, because it moves: with the reserve's grip, with the view, and out of a reading's way.
  const charge = createMemo(
    (): ChargeNotesOf => ({
      picture: props.picture,
      before: props.before,
      stratum: layout().charge,
      scale: scale(),
      reserveShare: props.reservePercent / 100,
      reserveName: reserveName(),
      spelledOut: !props.room.isPhone,
    }),
  );
  const chargeDrawn = createMemo(() => chargeLayer(charge()));
  const notes = createMemo(() => chargeNotes(charge()));
  const notesDrawn = createMemo(() => notesLayer(notes(), props.reading === null ? null : scale().x(props.reading.ms)));

  let scroller!: HTMLDivElement;
  let reader!: HTMLDivElement;
  createEffect(() => {
    if (Math.abs(scroller.scrollLeft - props.scroll()) > 1) scroller.scrollLeft = props.scroll();
  });
  // A reading that leaves the view takes the view along.
  createEffect(() => {
    if (props.reading === null || !props.scrolls) return;
    const x = scale().x(props.reading.ms);
    const view = scroller.clientWidth;
    const margin = Math.min(72, view / 4);
    if (x < scroller.scrollLeft + margin) scroller.scrollLeft = x - margin;
    if (x > scroller.scrollLeft + view - margin) scroller.scrollLeft = x - view + margin;
  });

  const readPointer = (event: PointerEvent) => {
    if (event.pointerType === "touch" && event.buttons === 0) return;
    const x = event.clientX - reader.getBoundingClientRect().left;
    props.onRead(snapReading(props.picture, scale().ms(x)));
  };

  function press(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const { picture } = props;
    const now = props.reading?.ms ?? picture.verdict.lowestMs;
    const step = event.shiftKey ? 6 * HOUR_MS : readingStepMs(picture);
    const moves: Record<string, () => number> = {
      ArrowRight: () => now + step,
      ArrowUp: () => now + step,
      ArrowLeft: () => now - step,
      ArrowDown: () => now - step,
      PageUp: () => now + 6 * HOUR_MS,
      PageDown: () => now - 6 * HOUR_MS,
      Home: () => picture.startMs,
      End: () => endMs(picture),
      n: () => nextNight(picture, now),
      N: () => nextNight(picture, now),
    };
    if (event.key === "Escape") props.onRead(null);
    const move = moves[event.key];
    if (move === undefined) return;
    event.preventDefault();
    props.onRead(snapReading(picture, move()));
  }

  return (
    <div class="section" classList={{ "section-phone": props.room.isPhone }}>
      <DrawnAxis drawing={drawing()} />
      <div
        class="section-scroll"
        ref={scroller}
        onScroll={(event) => props.onScroll(event.currentTarget.scrollLeft, event.currentTarget.clientWidth)}
      >
        <div class="section-plot" style={{ width: `${scale().widthPx}px` }}>
          <DrawnPlot drawing={drawing()} class="strata">
            <Drawn of={chargeDrawn()} />
            <Drawn of={notesDrawn()} />
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
          <div
            class="reader"
            ref={reader}
            role="slider"
            tabIndex={0}
            aria-label="Read an instant: arrow keys a quarter of an hour, with Shift six hours, N the next night"
            aria-valuemin={0}
            aria-valuemax={(endMs(props.picture) - props.picture.startMs) / 60_000}
            aria-valuenow={((props.reading?.ms ?? props.picture.startMs) - props.picture.startMs) / 60_000}
            aria-valuetext={props.reading?.words ?? "nothing read yet"}
            onPointerMove={readPointer}
            onPointerDown={(event) => {
              reader.setPointerCapture(event.pointerId);
              readPointer(event);
              const x = event.clientX - reader.getBoundingClientRect().left;
              props.onRead(snapReading(props.picture, scale().ms(x)));
            }}
            onPointerLeave={(event) => {
              if (event.pointerType === "mouse" && document.activeElement !== reader) props.onRead(null);
            }}
            onFocus={() => props.reading ?? props.onRead(snapReading(props.picture, props.picture.verdict.lowestMs))}
            onBlur={() => !props.room.isPhone && props.onRead(null)}
            onKeyDown={press}
          />
          <ReserveGrip
            percent={props.reservePercent}
            ah={reserveAh()}
            y={reserveY()}
            zeroY={layout().charge.bottom}
            fullY={layout().charge.top}
            x={gripX()}
            above={reserveName().above}
            onMove={props.onReserve}
            onSettle={props.onSettle}
          />
        </div>
        <DrawnNames drawing={drawing()} />
      </div>
    </div>
  );
}
