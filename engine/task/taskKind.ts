import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { Ready, TaskStore } from "./taskStore.ts";

/** Members, or rows of a sample, `from` to `to` (not included): one worker's share of the work. Plain data, so that it can be sent. */
export interface Stretch {
  readonly surroundings: Surroundings;
  /** Any text: the same seed gives the same members. */
  readonly seed: string;
  readonly from: number;
  readonly to: number;
}

/** Work that is done a few members at a time. */
export interface TaskWork<Part> {
  readonly membersAtOnce: number;
  readonly run: (from: number, to: number) => void;
  /** What was run, as it is sent. */
  readonly part: () => Part;
}

/**
 * One kind of work that a pool hands out: what it asks for (`Task`), what a worker sends back (`Part`), and what becomes of that when it is put
 * together (`Whole`), in the memory of `Into` where some is given. Whoever asks a question brings its kind; the pool only lists them.
 */
export interface TaskKind<Name extends string, Task extends Stretch, Part, Whole = Part, Into = undefined> {
  readonly name: Name;
  /** Members that are worth a worker of their own; what it costs to start one and to prepare in it is saved below that. */
  readonly fewest: number;
  /** The scenarios that it asks about; without those that cannot be read, which `work` says. */
  scenarios(task: Task): readonly Scenario[];
  /** Paths of the fields that it varies. */
  varies(task: Task): readonly string[];
  /**
   * Prepares a task, to be carried out piece by piece.
   * @param at told the member that is run, where that is known more exactly than by the piece
   */
  work(task: Task, store: TaskStore, at: (member: number) => void): Ready<TaskWork<Part>>;
  /** Puts parts together, in any order, to the same bits. */
  merge(parts: readonly Part[], into?: Into): Whole;
}

/** Starting a worker and preparing in it takes as long as some hundreds of members do; of what runs each member many times, some twenty. */
export const FEWEST_RUN_ONCE = 250;
export const FEWEST_RUN_OFTEN = 20;

/** What a kind that is about one read scenario says of it. */
export const ofOneScenario = {
  scenarios: ({ scenario }: { readonly scenario: Scenario }) => [scenario],
  varies: () => [],
};

/** Steps of members between two pauses: a hundredth of a second or two, short enough to cancel and long enough to cost nothing. */
const STEPS_BETWEEN_PAUSES = 60_000;

/** How many members are run between two pauses, where each of them is run `runs` times. */
export function membersAtOnce(steps: number, runs: number): number {
  return Math.max(1, Math.round(STEPS_BETWEEN_PAUSES / (steps * runs)));
}

/** Work whose pieces are parts themselves. */
export function workInParts<Part>(
  { prepared }: Pick<PreparedEnsemble, "prepared">,
  runs: number,
  partOf: (from: number, to: number) => Part,
  merge: (parts: readonly Part[]) => Part,
): TaskWork<Part> {
  const parts: Part[] = [];
  return {
    membersAtOnce: membersAtOnce(prepared.grid.steps, runs),
    run: (from, to) => parts.push(partOf(from, to)),
    part: () => merge(parts),
  };
}
