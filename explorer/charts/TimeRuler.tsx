import { For, Show } from "solid-js";
import type { RunPicture } from "../picture/runPicture.ts";
import { clockAt, dateParts, dayName, offsetName } from "../time/localClock.ts";
import { FrameBar } from "./FrameBar.tsx";
import type { TimeScale } from "./timeScale.ts";

export const RULER_PX = 62;
/** Least px to the hour at which 06 and 18 have room beside 12, and at which every hour has its tick. */
const THREE_MARKS_PX = 5;
const TICKS_PX = 3;

/** The ruler that every chart hangs from: days as columns, hours, and the nights filled in. */
export function TimeRuler(props: { picture: Pick<RunPicture, "ruler" | "nights">; scale: TimeScale }) {
  const days = () => props.picture.ruler.days;
  const dayPx = (index: number) => props.scale.x(days()[index]!.endMs) - props.scale.x(days()[index]!.startMs);
  return (
    <svg
      class="ruler-drawing"
      width={props.scale.widthPx}
      height={RULER_PX}
      role="img"
      aria-label={rulerWords(props.picture)}
    >
      <For each={days()}>
        {(day, index) => {
          const x = () => props.scale.x(day.startMs);
          return (
            <g>
              <line class="ruler-midnight" x1={x() + 0.5} x2={x() + 0.5} y1={4} y2={RULER_PX - 6} />
              <text class="ruler-day" x={x() + 8} y={21}>
                {dayPx(index()) < 64 ? dateParts(day.date).dayOfMonth : dayName(day.date)}
              </text>
              <Show when={dayPx(index()) >= 110}>
                <text class="ruler-number" x={props.scale.x(day.endMs) - 7} y={21} text-anchor="end">
                  {index() + 1}
                </text>
              </Show>
              <For each={day.marks.filter(({ hour }) => hour === 12 || props.scale.pxPerHour >= THREE_MARKS_PX)}>
                {(mark) => (
                  <text class="ruler-hour" x={props.scale.x(mark.ms)} y={43} text-anchor="middle">
                    {String(mark.hour).padStart(2, "0")}
                  </text>
                )}
              </For>
              <For each={props.scale.pxPerHour >= TICKS_PX ? day.hoursMs : day.marks.map((mark) => mark.ms)}>
                {(ms) => {
                  const marked = day.marks.some((mark) => mark.ms === ms);
                  return (
                    <line
                      class="ruler-tick"
                      x1={props.scale.x(ms)}
                      x2={props.scale.x(ms)}
                      y1={marked ? 47 : 51}
                      y2={54}
                    />
                  );
                }}
              </For>
            </g>
          );
        }}
      </For>
      <line
        class="ruler-midnight"
        x1={props.scale.widthPx - 0.5}
        x2={props.scale.widthPx - 0.5}
        y1={4}
        y2={RULER_PX - 6}
      />
      <FrameBar picture={props.picture} scale={props.scale} y={RULER_PX - 8} />
    </svg>
  );
}

function rulerWords({ ruler }: Pick<RunPicture, "ruler">): string {
  return `Time, ${ruler.days.map((day) => dayName(day.date)).join(", ")}; local time, ${zoneWords(ruler)}.`;
}

/** "local time, UTC+2"; where the clocks change, "UTC+2, from Sun 25 UTC+1". */
export function zoneWords(ruler: RunPicture["ruler"]): string {
  const [first, ...later] = ruler.offsets;
  const before = offsetName(first!.offsetMs);
  if (later.length === 0) return `local time, ${before}`;
  return [
    before,
    ...later.map(({ fromMs, offsetMs }) => `from ${clockAt(ruler, fromMs).day} ${offsetName(offsetMs)}`),
  ].join(", ");
}

/** "dark 18:24–07:07": the first whole night, or on a single day what there is of one. */
export function nightWords({ ruler, nights }: Pick<RunPicture, "ruler" | "nights">): string {
  const clock = (ms: number) => clockAt(ruler, ms).clock.slice(0, 5);
  const whole = nights.find((night) => night.startMs > ruler.startMs && night.endMs < ruler.endMs);
  if (whole !== undefined) return `dark ${clock(whole.startMs)}–${clock(whole.endMs)}`;
  if (nights.length === 0) return "never dark";
  const until = nights.find((night) => night.endMs < ruler.endMs);
  const from = nights.find((night) => night.startMs > ruler.startMs);
  const words = [
    ...(until === undefined ? [] : [`until ${clock(until.endMs)}`]),
    ...(from === undefined ? [] : [`from ${clock(from.startMs)}`]),
  ];
  return words.length === 0 ? "dark throughout" : `dark ${words.join(", ")}`;
}
