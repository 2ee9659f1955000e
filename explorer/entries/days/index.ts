/**
 * days: the event's days on the page.
 */
export { daysEntry } from "./entry.ts";
