import type { Want } from "../../engine/answers/asked.ts";
import type { ScenarioProblem } from "../../engine/answers/found.ts";
import type { WeatherText } from "../../engine/answers/makeSurroundings.ts";

/** What the page tells the desk: everything that it wants now and has not got; it takes the place of what was wanted before. */
export interface Orders {
  readonly round: number;
  readonly wants: readonly Want[];
  /** The weather files of the notebook; left out while they are what was sent last. */
  readonly weatherFiles?: readonly WeatherText[];
}

/** What came of something wanted: its picture, or what is wrong with its scenarios. */
export type Answer =
  | { readonly ok: true; readonly picture: unknown }
  | { readonly ok: false; readonly problems: readonly ScenarioProblem[] };

/** What the desk says. `whole` is false for a coarse first pass, which a better answer to the same key follows. */
export type Report =
  | { readonly say: "answer"; readonly key: string; readonly answer: Answer; readonly whole: boolean }
  | { readonly say: "progress"; readonly key: string; readonly done: number; readonly of: number }
  | { readonly say: "idle"; readonly round: number };

/** The part of a Worker that is needed here; what it says at one time comes as one message. */
export interface Desk {
  postMessage(orders: Orders): void;
  onmessage: ((event: MessageEvent<readonly Report[]>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}
