import { area, line } from "d3";
import type { TimePicture } from "../ruler/timePicture.ts";
import type { TimeScale } from "./timeScale.ts";

/** A tenth of a pixel: more only makes the text of a path longer to write and to read. */
const DIGITS = 1;

/** The ground between two rows of values, one at each step's start. */
export function bandArea(
  time: TimePicture,
  scale: TimeScale,
  y: (value: number) => number,
  low: Float64Array,
  high: Float64Array,
): string {
  const path = area<number>(
    (_, i) => scale.x(time.startMs + i * time.stepMs),
    (_, i) => y(low[i]!),
    (_, i) => y(high[i]!),
  ).digits(DIGITS);
  return path(low) ?? "";
}

/** A line through one value at each step's start. */
export function bandLine(
  time: TimePicture,
  scale: TimeScale,
  y: (value: number) => number,
  values: Float64Array,
): string {
  const path = line<number>(
    (_, i) => scale.x(time.startMs + i * time.stepMs),
    (value) => y(value),
  ).digits(DIGITS);
  return path(values) ?? "";
}

/** The step that an instant lies in, among `count` values. */
export function stepAt(time: TimePicture, ms: number, count: number): number {
  return Math.min(count - 1, Math.max(0, Math.floor((ms - time.startMs) / time.stepMs)));
}
