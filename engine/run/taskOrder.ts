import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { OddsPart } from "./oddsPart.ts";
import type { Surroundings } from "./surroundings.ts";

/** Members `from` to `to` (not included) of a scenario's ensemble: one worker's share of the work. Plain data, so that it can be sent. */
export interface OddsTask {
  readonly scenario: Scenario;
  readonly surroundings: Surroundings;
  /** Any text: the same seed gives the same members. */
  readonly seed: string;
  readonly from: number;
  readonly to: number;
}

/** How a task ended. A fault is ours: it names the member, so that it can be met again. */
export type TaskEnd =
  | { readonly kind: "part"; readonly part: OddsPart }
  | { readonly kind: "problems"; readonly problems: readonly Problem[] }
  | { readonly kind: "cancelled" }
  | { readonly kind: "fault"; readonly sentence: string };

/** What a worker is told, by numbers that the pool gives. */
export type TaskOrder =
  | { readonly kind: "run"; readonly number: number; readonly task: OddsTask }
  | { readonly kind: "cancel"; readonly number: number };

/** What a worker says. */
export type TaskReply =
  | { readonly kind: "progress"; readonly number: number; readonly done: number }
  | { readonly kind: "end"; readonly number: number; readonly end: TaskEnd };
