import type { Problem } from "../scenario/problem.ts";
import type { Stretch, TaskKind } from "./taskKind.ts";

/** The part of an AbortSignal that is needed here. */
export interface CancelSignal {
  readonly aborted: boolean;
  addEventListener(type: "abort", listener: () => void): void;
  removeEventListener(type: "abort", listener: () => void): void;
}

export interface TaskOptions {
  /** Called with members done and members in all, now and then. */
  readonly onProgress?: (done: number, of: number) => void;
  readonly signal?: CancelSignal;
  /** Members that are worth a worker of their own; what the kind of task says if left out. */
  readonly fewest?: number;
  /** The worker that the first stretch is for, where it is free; 0 if left out. The next stretch is for the next worker. */
  readonly home?: number;
  /** Most members in one stretch; shorter ones than the workers' equal shares let whoever is free take the next. */
  readonly most?: number;
}

/** Members in one part, or what is wrong with the scenario. */
export type TaskRun<Part> =
  | { readonly ok: true; readonly part: Part }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The asker no longer wants to know. Named as platforms name it, so that it is told apart from a fault. */
export class TaskCancelled extends Error {
  override readonly name = "AbortError";
}

/**
 * Workers that stay alive from one ensemble to the next, and what waits for them. A part has the same bits however many workers there are.
 */
export interface TaskPool {
  /**
   * Runs members `task.from` to `task.to` on all workers.
   * @param options and memory to put the parts together in, where the kind of task takes some
   * @throws RangeError where members are not whole numbers in order, TaskCancelled once `signal` is aborted, and EngineFault naming seed and
   *   member if a member cannot be run
   */
  readonly run: <Name extends string, Task extends Stretch, Part, Whole, Into>(
    kind: TaskKind<Name, Task, Part, Whole, Into>,
    task: Task,
    options?: TaskOptions & { readonly into?: Into },
  ) => Promise<TaskRun<Whole>>;
  /** Ends all workers. */
  readonly close: () => void;
}
