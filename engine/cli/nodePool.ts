import { availableParallelism } from "node:os";
import type { Worker } from "node:worker_threads";
import { serveTasks } from "../pool/task.ts";
import type { TaskReply } from "../pool/taskOrder.ts";
import { makeTaskPool } from "../pool/taskPool.ts";
import type { ConnectWorker } from "../pool/workers.ts";
import type { TaskPool } from "../task/taskRun.ts";
import { startThread } from "./startThread.ts";

/** More workers than this gain little and take memory each. */
const USUAL_MOST_WORKERS = 8;
const MOST_WORKERS = 256;

/**
 * Makes a pool of worker threads of Node, for the questions of the library that many members answer. The same seed gives the same bits whatever
 * the number of workers. They are started when first needed, stay for the next question and do not keep the program from ending. Where the
 * system allows no workers, this thread does the work.
 * @param workers how many, 0…256; 0 does it all in this thread; left out: one for each core, at most 8
 * @returns the pool; `close()` ends its workers
 * @see docs/library.md, recipe 2
 * @throws RangeError if `workers` is no whole number in 0…256
 */
export function makeNodePool(workers: number = Math.min(USUAL_MOST_WORKERS, availableParallelism())): TaskPool {
  if (!(Number.isInteger(workers) && workers >= 0 && workers <= MOST_WORKERS)) {
    throw new RangeError(`workers must be a whole number in 0…${MOST_WORKERS}, got ${workers}`);
  }
  return makeTaskPool(Math.max(1, workers), workers > 0 ? connectThread : connectHere);
}

const connectThread: ConnectWorker = (reply, broken) => {
  let worker: Worker;
  try {
    worker = startThread("poolWorker");
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
