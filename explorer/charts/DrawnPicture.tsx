import type { Drawing } from "../../engine/drawing/drawing.ts";
import { Drawn } from "./Drawn.tsx";

/** A drawing that has no ruler, whole; the same that goes into files, reports and slides. */
export function DrawnPicture(props: { drawing: Drawing; class: string }) {
  return (
    <svg
      class={props.class}
      width={props.drawing.widthPx}
      height={props.drawing.heightPx}
      role="img"
      aria-label={props.drawing.label}
    >
      <Drawn of={props.drawing.body} />
    </svg>
  );
}
