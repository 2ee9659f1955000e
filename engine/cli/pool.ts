import type { OddsPart } from "../odds/oddsPart.ts";
import { oddsTask } from "../odds/oddsTask.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { SizePart } from "../size/sizeMembers.ts";
import { type SizesTask, sizesTask } from "../size/sizesTask.ts";
import type { TaskOptions, TaskPool, TaskRun } from "../task/taskRun.ts";
import { makeNodePool } from "./nodePool.ts";

export interface PoolOptions extends TaskOptions {
  /** How many workers share the members; 0 does it all in this thread. Left out: one for each core, at most 8. */
  readonly workers?: number;
}

const pools = new Map<number | undefined, TaskPool>();

/**
 * Runs members `from` to `to` (not included) of a scenario's ensemble on all cores. The same seed gives the same bits
 * whatever the number of workers. Workers stay for the next call and do not keep the program from ending. Where the system allows no
 * workers, this thread does the work.
 * @param surroundings as for `prepareEnsemble`
 * @returns the members in one part for `oddsReport`, or what is wrong with the scenario
 * @throws TaskCancelled (an AbortError) once `signal` is aborted; EngineFault naming seed and member
 */
export function runOdds(
  scenario: Scenario,
  surroundings: Surroundings,
  seed: string,
  from: number,
  to: number,
  { workers, ...options }: PoolOptions = {},
): Promise<TaskRun<OddsPart>> {
  return poolOf(workers).run(oddsTask, { scenario, surroundings, seed, from, to }, options);
}

/** Runs members of a map on all cores, as `runOdds` does. */
export function runSizes(task: SizesTask, { workers, ...options }: PoolOptions = {}): Promise<TaskRun<SizePart>> {
  return poolOf(workers).run(sizesTask, task, options);
}

/** The pool of workers, kept for the next call. @param workers 0 does all in this thread; left out: one for each core, at most 8 */
export function poolOf(workers?: number): TaskPool {
  const pool = pools.get(workers) ?? makeNodePool(workers);
  pools.set(workers, pool);
  return pool;
}
