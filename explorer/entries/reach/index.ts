/**
 * reach: what it would take, on the page: levers locked, rows made scenarios.
 */
export { reachEntry } from "./entry.ts";
