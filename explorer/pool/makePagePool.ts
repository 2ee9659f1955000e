import type { TaskOrder, TaskReply } from "../../engine/pool/taskOrder.ts";
import { makeTaskPool } from "../../engine/pool/taskPool.ts";
import type { ConnectWorker } from "../../engine/pool/workers.ts";
import type { TaskPool } from "../../engine/task/taskRun.ts";
import { askPage, type PoolWorker } from "./askPage.ts";

// By its own file: through the index, the page itself would carry the whole engine, which its workers have.

/** More workers than this gain little and take memory each. */
const MOST_WORKERS = 8;

/** Members of ensembles on all cores of whoever reads the page; workers are started when first needed. @param start starts one */
export function makePagePool(start: () => PoolWorker = askPage): TaskPool {
  return makeTaskPool(Math.min(MOST_WORKERS, navigator.hardwareConcurrency || 1), connecting(start));
}

/**
 * A worker that fails before it has said anything is started again, with the orders that it was sent: where two are started at one time
 * without a network, WebKit asks the service worker for the script of one of them only, and the others' never come. Each turn brings one
 * more of them up, so as many turns as workers do.
 */
const connecting =
  (startWorker: () => PoolWorker): ConnectWorker =>
  (reply, broken) => {
    const sent: TaskOrder[] = [];
    let hasSpoken = false;
    let starts = 0;
    const start = (): PoolWorker => {
      starts++;
      const started = startWorker();
      started.onmessage = ({ data }: MessageEvent<TaskReply>) => {
        hasSpoken = true;
        sent.length = 0;
        reply(data);
      };
      started.onerror = ({ message }) => {
        started.terminate();
        if (hasSpoken || starts >= MOST_WORKERS) return broken(message || "no reason given");
        worker = start();
        for (const order of sent) worker.postMessage(order);
      };
      return started;
    };
    let worker = start();
    return {
      post: (order) => {
        if (!hasSpoken) sent.push(order);
        worker.postMessage(order);
      },
      keep: () => {},
      stop: () => worker.terminate(),
    };
  };
