import type { TimeScale } from "../../engine/drawing/timeScale.ts";
import { endMs, nextNight, readingStepMs, snapReading } from "../../engine/ruler/readingTime.ts";
import type { TimePicture } from "../../engine/ruler/timePicture.ts";

/** A pointer that moves less than this has not been dragged, px. */
const SAME_PX = 4;
const MINUTE_MS = 60_000;
const LEAP_MS = 6 * 60 * MINUTE_MS;

/** Lies over a chart and reads an instant off it: by pointer, or by arrow keys with the focus on it. */
export function Reader(props: {
  label: string;
  time: TimePicture;
  scale: TimeScale;
  /** The instant that is read, and what stands there as a sentence. */
  ms: number | null;
  words: string;
  /** Where the keys begin while nothing is read. */
  firstMs: number;
  /** Whether the focus alone reads that instant. */
  readsOnFocus: boolean;
  /** Whether what was read stays when the focus leaves. */
  isPhone: boolean;
  onRead: (ms: number | null) => void;
  /** Asks how what stands there comes about: by Enter, or by a click of the mouse. */
  onWhy?: ((ms: number) => void) | undefined;
}) {
  let downX = 0;
  let reader!: HTMLDivElement;
  const read = (ms: number) => props.onRead(snapReading(props.time, ms));
  const readPointer = (event: PointerEvent) => {
    if (event.pointerType === "touch" && event.buttons === 0) return;
    read(props.scale.ms(event.clientX - reader.getBoundingClientRect().left));
  };
  function press(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "Escape") props.onRead(null);
    if (event.key === "Enter" && props.ms !== null && props.onWhy !== undefined) {
      event.preventDefault();
      props.onWhy(props.ms);
    }
    const { time } = props;
    const now = props.ms ?? props.firstMs;
    const step = event.shiftKey ? LEAP_MS : readingStepMs(time);
    const to: Record<string, number> = {
      ArrowRight: now + step,
      ArrowUp: now + step,
      ArrowLeft: now - step,
      ArrowDown: now - step,
      PageUp: now + LEAP_MS,
      PageDown: now - LEAP_MS,
      Home: time.startMs,
      End: endMs(time),
      n: nextNight(time, now),
      N: nextNight(time, now),
    };
    const ms = to[event.key];
    if (ms === undefined) return;
    event.preventDefault();
    read(ms);
  }
  return (
    <div
      class="reader"
      ref={reader}
      role="slider"
      tabIndex={0}
      aria-label={props.label}
      aria-valuemin={0}
      aria-valuemax={(endMs(props.time) - props.time.startMs) / MINUTE_MS}
      aria-valuenow={((props.ms ?? props.time.startMs) - props.time.startMs) / MINUTE_MS}
      aria-valuetext={props.ms === null ? "nothing read yet" : props.words}
      onPointerMove={readPointer}
      onPointerDown={(event) => {
        downX = event.clientX;
        reader.setPointerCapture(event.pointerId);
        readPointer(event);
      }}
      // A finger reads; a drag is no question.
      onClick={(event) => {
        const isMouse = (event as MouseEvent & { pointerType?: string }).pointerType === "mouse";
        if (isMouse && props.ms !== null && Math.abs(event.clientX - downX) < SAME_PX) props.onWhy?.(props.ms);
      }}
      onPointerLeave={(event) => {
        if (event.pointerType === "mouse" && document.activeElement !== reader) props.onRead(null);
      }}
      onFocus={() => props.readsOnFocus && props.ms === null && read(props.firstMs)}
      onBlur={() => !props.isPhone && props.onRead(null)}
      onKeyDown={press}
    />
  );
}
