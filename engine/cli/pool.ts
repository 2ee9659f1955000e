import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import type { OddsPart } from "../odds/oddsPart.ts";
import { oddsTask } from "../odds/oddsTask.ts";
import { serveTasks } from "../pool/task.ts";
import type { TaskReply } from "../pool/taskOrder.ts";
import { makeTaskPool } from "../pool/taskPool.ts";
import type { ConnectWorker } from "../pool/workers.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { SizePart } from "../size/sizeMembers.ts";
import { type SizesTask, sizesTask } from "../size/sizesTask.ts";
import type { TaskOptions, TaskPool, TaskRun } from "../task/taskRun.ts";

/** More workers than this gain little and take memory each. */
const MOST_WORKERS = 8;

export interface PoolOptions extends TaskOptions {
  /** How many workers share the members; 0 does it all in this thread. Left out: one for each core, at most 8. */
  readonly workers?: number;
}

const pools = new Map<number, TaskPool>();

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
export function poolOf(workers = Math.min(MOST_WORKERS, availableParallelism())): TaskPool {
  const pool = pools.get(workers) ?? makeTaskPool(Math.max(1, workers), workers > 0 ? connectThread : connectHere);
  pools.set(workers, pool);
  return pool;
}

/** Starts the worker's program: beside this file or one folder up when bundled, else its source by way of the project's own loader. */
function startThread(): Worker {
  for (const name of ["./poolWorker.js", "../poolWorker.js"]) {
    const path = new URL(name, import.meta.url);
    if (existsSync(fileURLToPath(path))) return new Worker(path);
  }
  const source = new URL("./poolWorker.ts", import.meta.url);
  const program = `import("tsx/esm/api").then(({ register }) => { register(); return import(${JSON.stringify(source.href)}); });`;
  return new Worker(program, { eval: true });
}

const connectThread: ConnectWorker = (reply, broken) => {
  let worker: Worker;
  try {
    worker = startThread();
  } catch {
    return connectHere(reply, broken);
  }
  worker.on("message", (said: TaskReply) => reply(said));
  worker.on("error", (error) => broken(error instanceof Error ? error.message : String(error)));
  worker.on("exit", () => broken("it ended by itself"));
  worker.unref();
  return {
    post: (order) => worker.postMessage(order),
    keep: (isBusy) => (isBusy ? worker.ref() : worker.unref()),
    stop: () => void worker.terminate(),
  };
};

/** Does the work in this thread, in turns with everything else. */
const connectHere: ConnectWorker = (reply) => {
  const take = serveTasks(reply, () => new Promise((resolve) => setImmediate(resolve)));
  return { post: take, keep: () => {}, stop: () => {} };
};
