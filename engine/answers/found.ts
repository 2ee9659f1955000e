import type { Problem } from "../scenario/problem.ts";

/** What is wrong with a scenario: a sentence, and the path of the field in its document where there is one. */
export type ScenarioProblem = Problem;

/** A result as far as it is known: newest first of what was asked; `stale` while something newer is in work. */
export interface Found<Result> {
  readonly result: Result | null;
  readonly stale: boolean;
  /** Members done and asked for; null where nothing runs. */
  readonly progress: { readonly done: number; readonly of: number } | null;
  readonly problems: readonly ScenarioProblem[];
}
