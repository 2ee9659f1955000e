/**
 * note: notes on the page, with figures in them that follow.
 */
export { noteEntry } from "./entry.ts";
