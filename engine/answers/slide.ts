import type { Drawing } from "../drawing/drawing.ts";
import type { Markup } from "../drawing/html.ts";
import type { TimeScale } from "../drawing/timeScale.ts";
import type { TimePicture } from "../ruler/timePicture.ts";
import type { Look } from "../words/look.ts";
import type { Words } from "../words/said.ts";

/** A drawing on the ruler, with what the pointer line reads there. */
export interface SlideChart {
  readonly drawing: Drawing;
  readonly time: TimePicture;
  readonly scale: TimeScale;
  /** Where the days begin, from the drawing's left. */
  readonly leftPx: number;
  /** The lines' heights and values at an instant. */
  marks(ms: number): readonly { readonly y: number; readonly text: string; readonly look: Look }[];
}

/** What an entry puts on its slide: a sentence, and one chart or a few lines. */
export interface SlideContent {
  readonly words?: readonly Words[];
  readonly chart?: SlideChart | null;
  readonly body?: Markup | null;
}
