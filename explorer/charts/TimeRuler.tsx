import { For, Show } from "solid-js";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import { QUIET_Y_PX, RULER_PX, THREE_MARKS_PX, TICKS_PX } from "../../engine/drawing/rulerPx.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";
import { dateParts, dayName } from "../../engine/ruler/rulerClock.ts";
import { rulerWords } from "../../engine/ruler/rulerWords.ts";
import { FrameBar } from "./FrameBar.tsx";

/** The ruler that every chart hangs from: days as columns, hours, and the nights filled in. */
export function TimeRuler(props: { picture: Pick<RunPicture, "ruler" | "nights" | "quiet">; scale: TimeScale }) {
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
      <For each={props.picture.quiet}>
        {(span) => (
          <line
            class="ruler-quiet"
            x1={props.scale.x(span.startMs) + 3}
            x2={props.scale.x(span.endMs) - 3}
            y1={QUIET_Y_PX}
            y2={QUIET_Y_PX}
          />
        )}
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
