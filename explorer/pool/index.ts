/**
 * pool: the engine's pool on the workers of a page. The desk, a worker itself, asks its page to start them.
 */
export { makePagePool } from "./makePagePool.ts";
export * from "./poolWorker.ts";
export { startForDesk } from "./startForDesk.ts";
