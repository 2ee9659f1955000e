import type { Look } from "./look.ts";

/** A piece of a sentence: plain, a heavy figure, or words that name a scenario in the stroke of its line. */
export interface Words {
  readonly text: string;
  readonly as?: "figure" | Look;
}
