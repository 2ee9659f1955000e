/**
 * actual: plan against actual on the page: a log is dropped, its columns asked for, the miss split.
 */
export { actualEntry } from "./entry.ts";
export * from "./logWorker.ts";
export { type LogAsked, readLog } from "./readLog.ts";
