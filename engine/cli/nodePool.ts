import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { serveTasks } from "../pool/task.ts";
import type { TaskReply } from "../pool/taskOrder.ts";
import { makeTaskPool } from "../pool/taskPool.ts";
import type { ConnectWorker } from "../pool/workers.ts";
import type { TaskPool } from "../task/taskRun.ts";

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
