/**
 * versus: scenarios held against one another on the page.
 */
export { versusEntry } from "./entry.ts";
