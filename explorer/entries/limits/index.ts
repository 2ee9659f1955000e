/**
 * limits: wiring and limits on the page.
 */
export { limitsEntry } from "./entry.ts";
