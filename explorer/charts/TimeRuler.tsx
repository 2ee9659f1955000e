import { createMemo } from "solid-js";
import { rulerMarks } from "../../engine/drawing/rulerMarks.ts";
import { RULER_PX } from "../../engine/drawing/rulerPx.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";
import { rulerWords } from "../../engine/ruler/rulerWords.ts";
import type { TimePicture } from "../../engine/ruler/timePicture.ts";
import { Drawn } from "./Drawn.tsx";

/** The ruler above every chart: days as columns, hours, and the nights filled in. */
export function TimeRuler(props: { picture: Pick<TimePicture, "ruler" | "nights" | "quiet">; scale: TimeScale }) {
  const marks = createMemo(() => rulerMarks(props.picture, props.scale));
  return (
    <svg
      class="ruler-drawing"
      width={props.scale.widthPx}
      height={RULER_PX}
      role="img"
      aria-label={rulerWords(props.picture)}
    >
      <Drawn of={marks()} />
    </svg>
  );
}
