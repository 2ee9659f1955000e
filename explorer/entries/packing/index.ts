/**
 * packing: what to take along, on the page: what the club has, ticked and edited; the sets; the list to print.
 */
export { packingEntry } from "./entry.ts";
