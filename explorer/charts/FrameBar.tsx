import { For } from "solid-js";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";

/** The border bar: filled by night, open by day; heads every entry. */
export function FrameBar(props: { picture: Pick<RunPicture, "nights">; scale: TimeScale; y?: number }) {
  return (
    <g class="frame" transform={`translate(0 ${props.y ?? 0})`}>
      <rect class="frame-open" x={0.5} y={0.5} width={props.scale.widthPx - 1} height={6} />
      <For each={props.picture.nights}>
        {(night) => (
          <rect
            class="frame-night"
            x={props.scale.x(night.startMs)}
            y={0}
            width={props.scale.x(night.endMs) - props.scale.x(night.startMs)}
            height={7}
          />
        )}
      </For>
    </g>
  );
}
