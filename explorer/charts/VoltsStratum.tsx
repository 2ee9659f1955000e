import { For } from "solid-js";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import type { Stratum } from "../../engine/answers/run/strataLayout.ts";
import { endMs, voltsPath } from "../../engine/answers/run/strataPaths.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";

/** Volts at the radios that drop out on their own peaks; apart from energy, because charging does not cure it. */
export function VoltsStratum(props: { picture: RunPicture; stratum: Stratum; scale: TimeScale }) {
  return (
    <g class="data">
      <For each={props.picture.radios}>
        {(radio) => (
          <>
            <line
              class="radio-least"
              x1={props.scale.x(props.picture.startMs)}
              x2={props.scale.x(endMs(props.picture))}
              y1={props.stratum.y(radio.minimumV)}
              y2={props.stratum.y(radio.minimumV)}
            />
            <path class="radio-volts" d={voltsPath(props.picture, props.stratum, props.scale, radio)} />
          </>
        )}
      </For>
    </g>
  );
}
