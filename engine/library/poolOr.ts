import { serveTasks } from "../pool/task.ts";
import { makeTaskPool } from "../pool/taskPool.ts";
import type { TaskOptions, TaskPool } from "../task/taskRun.ts";
import type { AskOptions } from "./askOptions.ts";

/** The pool that was given, or one that does its work in this thread and keeps nothing for the next call. */
export function poolOr(pool: TaskPool | undefined): TaskPool {
  return (
    pool ??
    makeTaskPool(1, (reply) => ({ post: serveTasks(reply, () => Promise.resolve()), keep: () => {}, stop: () => {} }))
  );
}

/** What a pool is told of what was chosen. */
export function taskOptions({ signal, onProgress }: AskOptions): TaskOptions {
  return { ...(signal === undefined ? {} : { signal }), ...(onProgress === undefined ? {} : { onProgress }) };
}
