/**
 * results: answers of a notebook: what is asked goes to a desk in a worker, and comes back coarse and then whole.
 */
export type { Answer, Desk, Orders, Report } from "./desk.ts";
export * from "./deskWorker.ts";
export { makeDeskWork } from "./makeDeskWork.ts";
export { makeResults, type Results } from "./makeResults.ts";
