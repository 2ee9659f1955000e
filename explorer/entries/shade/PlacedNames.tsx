import { Index } from "solid-js";
import type { PlacedLabel } from "../../../engine/drawing/placeLabels.ts";

/** Names at their places, all leaders under all letters. */
export function PlacedNames<Label extends PlacedLabel>(props: {
  labels: readonly Label[];
  look: (label: Label) => string | undefined;
}) {
  return (
    <svg class="plan-names" aria-hidden="true">
      <Index each={props.labels}>{(label) => <path class="name-leader" d={label().leader} />}</Index>
      <Index each={props.labels}>
        {(label) => (
          <text class={props.look(label())} x={label().x} y={label().y} text-anchor={label().anchor}>
            {label().text}
          </text>
        )}
      </Index>
    </svg>
  );
}
