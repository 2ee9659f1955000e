import type { TimeScale } from "../../drawing/timeScale.ts";
import { DARK, NIGHT, OPEN, PART } from "./sunKind.ts";
import type { GroupSun, Sunlight } from "./sunlight.ts";

/** The shapes of one group's row, as SVG paths; the row's foot is at 0, full sun reaches `heightPx` above it. */
export interface StripShapes {
  readonly open: string;
  readonly part: string;
  /** Lines along the foot: sun up and kept off; sun up but behind the panel, or the panel packed away. */
  readonly dark: string;
  readonly away: string;
}

/** Draws a group's share of the beam: as high as the share, filled by its kind. */
export function stripShapes(light: Sunlight, group: GroupSun, scale: TimeScale, heightPx: number): StripShapes {
  const shapes = { open: "", part: "", dark: "", away: "" };
  const x = (i: number) => scale.x(light.startMs + i * light.stepMs).toFixed(1);
  for (let first = 0; first < light.steps; ) {
    const kind = group.kind[first]!;
    let end = first + 1;
    while (end < light.steps && group.kind[end] === kind) end++;
    if (kind === OPEN || kind === PART) {
      let path = `M${x(first)} 0`;
      for (let i = first; i < end; i++) path += `V${(-group.share[i]! * heightPx).toFixed(1)}H${x(i + 1)}`;
      shapes[kind === OPEN ? "open" : "part"] += `${path}V0Z`;
    } else if (kind !== NIGHT) {
      shapes[kind === DARK ? "dark" : "away"] += `M${x(first)} 0H${x(end)}`;
    }
    first = end;
  }
  return shapes;
}
