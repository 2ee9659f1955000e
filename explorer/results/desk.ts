import type { LimitOptions, LimitsReport, ScenarioInput, SizeAims, SizeWish } from "../../engine/index.ts";
import type { ActualPicture } from "../entries/actual/actualPicture.ts";
import type { LearnedPicture } from "../entries/readings/learnedPicture.ts";
import type { EntryDoc } from "../notebook/notebook.ts";
import type { ScenarioProblem } from "../notebook/notebookPage.ts";
import type { RunPicture } from "../picture/runPicture.ts";
import type { WeatherText } from "../weather/weatherEdits.ts";
import type { DriversPicture, OddsPicture, SizePicture, VersusPicture } from "./answers.ts";

/** Something that the page wants worked out; `key` is its whole content, so that equal wants have equal keys. */
export type Want =
  | { readonly key: string; readonly kind: "run"; readonly document: ScenarioInput }
  | {
      readonly key: string;
      readonly kind: "limits";
      readonly document: ScenarioInput;
      readonly options: LimitOptions;
    }
  | {
      readonly key: string;
      readonly kind: "learned";
      readonly document: ScenarioInput;
      readonly readings: EntryDoc<"readings">["readings"];
      readonly seed: string;
      readonly members: number;
    }
  | {
      readonly key: string;
      readonly kind: "actual";
      readonly document: ScenarioInput;
      readonly log: NonNullable<EntryDoc<"actual">["log"]>;
      readonly seed: string;
    }
  | {
      readonly key: string;
      readonly kind: "odds";
      readonly document: ScenarioInput;
      readonly seed: string;
      readonly members: number;
    }
  | {
      readonly key: string;
      readonly kind: "versus";
      readonly documents: readonly [ScenarioInput, ScenarioInput];
      readonly seed: string;
      readonly members: number;
    }
  | {
      readonly key: string;
      readonly kind: "sizes";
      readonly document: ScenarioInput;
      /** Left out: what `usualWishes` looks at. */
      readonly x?: SizeWish;
      readonly y?: SizeWish;
      readonly aims: SizeAims;
      readonly seed: string;
      readonly members: number;
    }
  | {
      readonly key: string;
      readonly kind: "drivers";
      readonly document: ScenarioInput;
      readonly seed: string;
      /** Rows of the sample. */
      readonly members: number;
    };

/** What the page tells the desk: everything that it wants now and has not got; it takes the place of what was wanted before. */
export interface Orders {
  readonly round: number;
  readonly wants: readonly Want[];
  /** The weather files of the notebook; left out while they are what was sent last. */
  readonly weatherFiles?: readonly WeatherText[];
}

export type Answer =
  | { readonly kind: "run"; readonly picture: RunPicture }
  | { readonly kind: "odds"; readonly picture: OddsPicture }
  | { readonly kind: "versus"; readonly picture: VersusPicture }
  | { readonly kind: "sizes"; readonly picture: SizePicture }
  | { readonly kind: "drivers"; readonly picture: DriversPicture }
  | { readonly kind: "limits"; readonly picture: LimitsReport }
  | { readonly kind: "learned"; readonly picture: LearnedPicture }
  | { readonly kind: "actual"; readonly picture: ActualPicture }
  | { readonly kind: "problems"; readonly problems: readonly ScenarioProblem[] };

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
