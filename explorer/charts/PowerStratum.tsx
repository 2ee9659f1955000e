import { For } from "solid-js";
import type { Part } from "../../engine/answers/run/parts.ts";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import type { Stratum } from "../../engine/answers/run/strataLayout.ts";
import { powerArea, powerEdge } from "../../engine/answers/run/strataPaths.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";

/** Powers stacked upon one another, each in its own pattern; contours are drawn as an edge without an area. */
export function PowerStratum(props: {
  picture: RunPicture;
  parts: readonly Part[];
  contours?: readonly Part[];
  stratum: Stratum;
  scale: TimeScale;
}) {
  return (
    <g class="data">
      <For each={props.parts}>
        {(part) => (
          <path
            class={`part part-${part.look}`}
            d={powerArea(props.picture, props.stratum, props.scale, part.lowW, part.highW)}
          />
        )}
      </For>
      <For each={props.contours ?? []}>
        {(part) => (
          <path
            class={`contour contour-${part.look}`}
            d={powerEdge(props.picture, props.stratum, props.scale, part.highW)}
          />
        )}
      </For>
    </g>
  );
}
