/**
 * task: what a kind of work is that workers share, what a worker keeps from one task to the next, and what a pool promises.
 */
export {
  type CancelSignal,
  TaskCancelled,
  type TaskOptions,
  type TaskPool,
  type TaskRun,
} from "./taskRun.ts";
export { makeTaskStore, type TaskStore } from "./taskStore.ts";
