/**
 * drivers: what decides, on the page.
 */
export { driversEntry } from "./entry.ts";
