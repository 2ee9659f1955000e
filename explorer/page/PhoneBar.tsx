import type { Reading } from "../../engine/answers/run/readingAt.ts";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import { frameBar } from "../../engine/drawing/frameBar.ts";
import { timeScale } from "../../engine/drawing/timeScale.ts";
import { endMs, nextNight, readingStepMs, snapReading } from "../../engine/ruler/readingTime.ts";
import { ampHours, percent, watts } from "../../engine/words/numbers.ts";
import { Drawn } from "../charts/Drawn.tsx";

const HOUR_MS = 3_600_000;

/** At the thumb: the reading in words, the whole frame as a scrubber, and four buttons. */
export function PhoneBar(props: {
  picture: RunPicture;
  reading: Reading;
  widthPx: number;
  /** The stretch of time in view. */
  viewMs: readonly [number, number];
  isPlanOpen: boolean;
  onRead: (ms: number) => void;
  onPlan: () => void;
}) {
  const scale = () => {
    const usual = timeScale(props.picture.ruler, null);
    const factor = (props.widthPx - 32) / usual.widthPx;
    return { ...usual, widthPx: usual.widthPx * factor, x: (ms: number) => usual.x(ms) * factor };
  };
  const move = (ms: number) => props.onRead(snapReading(props.picture, ms));
  const all = () => props.picture.ruler;
  return (
    <section class="phone-bar" aria-label="Time and changes">
      <p class="readout">
        <strong>{props.reading.when}</strong>
        <span class="plan-ink">
          {percent(props.reading.chargeShare)}, {ampHours(props.reading.chargeAh)}
        </span>
        <span>in {watts(props.reading.incomingW)}</span>
        <span>out {watts(props.reading.servedW)}</span>
      </p>
      <div class="scrubber">
        <svg width={props.widthPx - 32} height="44" aria-hidden="true">
          <Drawn of={frameBar(props.picture.nights, scale(), 18)} />
          <rect
            class="scrub-view"
            x={scale().x(props.viewMs[0])}
            width={Math.max(8, scale().x(props.viewMs[1]) - scale().x(props.viewMs[0]))}
            y="6"
            height="32"
          />
          <line class="scrub-now" x1={scale().x(props.reading.ms)} x2={scale().x(props.reading.ms)} y1="2" y2="42" />
        </svg>
        <input
          type="range"
          aria-label="Time"
          min={all().startMs / 60_000}
          max={all().endMs / 60_000}
          step={readingStepMs(props.picture) / 60_000}
          value={props.reading.ms / 60_000}
          aria-valuetext={props.reading.words}
          onInput={(event) => move(event.currentTarget.valueAsNumber * 60_000)}
        />
      </div>
      <div class="thumbs">
        <button
          type="button"
          disabled={props.reading.ms <= props.picture.startMs}
          onClick={() => move(props.reading.ms - HOUR_MS)}
        >
          Earlier
        </button>
        <button
          type="button"
          disabled={props.reading.ms >= endMs(props.picture)}
          onClick={() => move(props.reading.ms + HOUR_MS)}
        >
          Later
        </button>
        <button type="button" onClick={() => move(nextNight(props.picture, props.reading.ms))}>
          Night
        </button>
        <button
          type="button"
          aria-expanded={props.isPlanOpen}
          aria-controls="planFields"
          onClick={() => props.onPlan()}
        >
          {props.isPlanOpen ? "Done" : "Change"}
        </button>
      </div>
    </section>
  );
}
