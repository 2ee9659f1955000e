import type { TaskReply } from "../../engine/pool/taskOrder.ts";
import { makeTaskPool } from "../../engine/pool/taskPool.ts";
import type { ConnectWorker } from "../../engine/pool/workers.ts";
import type { TaskPool } from "../../engine/task/taskRun.ts";

// By its own file: through the index, the page itself would carry the whole engine, which its workers have.

/** More workers than this gain little and take memory each. */
const MOST_WORKERS = 8;

/** Members of ensembles on all cores of whoever reads the page; workers are started when first needed. */
export function makePagePool(): TaskPool {
  return makeTaskPool(Math.min(MOST_WORKERS, navigator.hardwareConcurrency || 1), connectWebWorker);
}

const connectWebWorker: ConnectWorker = (reply, broken) => {
  const worker = new Worker(new URL("./poolWorker.ts", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }: MessageEvent<TaskReply>) => reply(data);
  worker.onerror = (event) => {
    worker.terminate();
    broken(event.message || "no reason given");
  };
  return { post: (order) => worker.postMessage(order), keep: () => {}, stop: () => worker.terminate() };
};
