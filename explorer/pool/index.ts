/**
 * pool: the engine's pool on the workers of a page.
 */
export { makePagePool } from "./makePagePool.ts";
export * from "./poolWorker.ts";
