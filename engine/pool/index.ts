/**
 * pool: work on members handed out to workers and put together again, to the same bits however many there are.
 */
export { serveTasks } from "./task.ts";
export type { OddsTask, SizesTask, TaskOrder, TaskReply } from "./taskOrder.ts";
export {
  type CancelSignal,
  type ConnectWorker,
  makeTaskPool,
  type OddsRun,
  TaskCancelled,
  type TaskOptions,
  type TaskPool,
  type TaskRun,
} from "./taskPool.ts";
export { makeTaskStore, type TaskStore } from "./taskStore.ts";
