import { createMemo, For, Show } from "solid-js";
import { incomingParts, loadParts } from "../../engine/answers/run/parts.ts";
import type { Reading } from "../../engine/answers/run/readingAt.ts";
import type { ReserveName } from "../../engine/answers/run/reserveNamePlace.ts";
import { innerLabels } from "../../engine/answers/run/runLabels.ts";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import type { StrataLayout, Stratum } from "../../engine/answers/run/strataLayout.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";
import { ChargeStratum } from "./ChargeStratum.tsx";
import { Patterns } from "./Patterns.tsx";
import { PowerStratum } from "./PowerStratum.tsx";
import { ReadingLine } from "./ReadingLine.tsx";
import { VoltsStratum } from "./VoltsStratum.tsx";

/** The section itself: nights without a break, then stratum upon stratum. */
export function StrataDrawing(props: {
  picture: RunPicture;
  before: RunPicture | null;
  layout: StrataLayout;
  scale: TimeScale;
  reserveShare: number;
  reserveName: ReserveName;
  reading: Reading | null;
  /** Whether a reading's values stand to the left of its line. */
  flips: boolean;
  /** Whether rings carry words; a phone shows too little of the time for that and has a line of its own. */
  spelledOut: boolean;
  /** What the picture says, in sentences. */
  label: string;
}) {
  const strata = () => [props.layout.charge, props.layout.incoming, props.layout.load, props.layout.volts];
  const midnights = () => props.picture.ruler.days.slice(1).map((day) => props.scale.x(day.startMs));
  const incoming = createMemo(() => incomingParts(props.picture));
  return (
    <svg class="strata" width={props.scale.widthPx} height={props.layout.heightPx} role="img" aria-label={props.label}>
      <Patterns />
      <For each={props.picture.nights}>
        {(night) => (
          <rect
            class="night"
            x={props.scale.x(night.startMs)}
            width={props.scale.x(night.endMs) - props.scale.x(night.startMs)}
            y={0}
            height={props.layout.heightPx}
          />
        )}
      </For>
      <For each={midnights()}>{(x) => <line class="midnight" x1={x} x2={x} y1={0} y2={props.layout.heightPx} />}</For>
      <For each={strata().filter((stratum): stratum is Stratum => stratum !== null)}>
        {(stratum) => (
          <For each={stratum.ticks}>
            {(tick, i) => (
              <line
                class={i() === 0 ? "axis-base" : "axis-line"}
                x1={0}
                x2={props.scale.widthPx}
                y1={Math.round(stratum.y(tick)) + 0.5}
                y2={Math.round(stratum.y(tick)) + 0.5}
              />
            )}
          </For>
        )}
      </For>
      <PowerStratum
        picture={props.picture}
        parts={[...incoming().stack, incoming().spilled]}
        contours={[incoming().shade]}
        stratum={props.layout.incoming}
        scale={props.scale}
      />
      <PowerStratum
        picture={props.picture}
        parts={loadParts(props.picture)}
        stratum={props.layout.load}
        scale={props.scale}
      />
      <Show when={props.layout.volts}>
        {(stratum) => <VoltsStratum picture={props.picture} stratum={stratum()} scale={props.scale} />}
      </Show>
      <For each={innerLabels(props.picture, props.layout, props.scale)}>
        {(label) => (
          <text class="inner data" x={label.x} y={label.y} text-anchor="middle">
            {label.text}
          </text>
        )}
      </For>
      <ChargeStratum
        picture={props.picture}
        before={props.before}
        stratum={props.layout.charge}
        scale={props.scale}
        reserveShare={props.reserveShare}
        reserveName={props.reserveName}
        spelledOut={props.spelledOut}
        readingX={props.reading === null ? null : props.scale.x(props.reading.ms)}
      />
      <Show when={props.reading}>
        {(reading) => (
          <ReadingLine
            picture={props.picture}
            reading={reading()}
            layout={props.layout}
            scale={props.scale}
            flips={props.flips}
            spelledOut={props.spelledOut}
          />
        )}
      </Show>
    </svg>
  );
}
