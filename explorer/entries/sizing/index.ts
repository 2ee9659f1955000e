/**
 * sizing: the map of sizes on the page: cell by cell, made scenarios.
 */
export { sizingEntry } from "./entry.ts";
