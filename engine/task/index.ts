/**
 * task: what a kind of work is that workers share, what a worker keeps from one task to the next, and what a pool promises.
 */
export {
  FEWEST_RUN_OFTEN,
  FEWEST_RUN_ONCE,
  membersAtOnce,
  ofOneScenario,
  type Stretch,
  type TaskKind,
  type TaskWork,
  workInParts,
} from "./taskKind.ts";
export { type CancelSignal, TaskCancelled, type TaskOptions, type TaskPool, type TaskRun } from "./taskRun.ts";
export { identities, makeTaskStore, type Ready, type TaskStore } from "./taskStore.ts";
