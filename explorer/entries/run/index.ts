/**
 * run: one run on the page.
 */
export { runEntry } from "./entry.ts";
