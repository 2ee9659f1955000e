/**
 * pool: work on members handed out to workers and put together again, to the same bits however many there are.
 */
export { serveTasks } from "./task.ts";
export { kindOfTask } from "./taskKinds.ts";
export type { TaskOrder, TaskReply } from "./taskOrder.ts";
export { makeTaskPool } from "./taskPool.ts";
export type { ConnectWorker } from "./workers.ts";
