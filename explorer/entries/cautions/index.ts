/**
 * cautions: cautions on the page.
 */
export { cautionsEntry } from "./entry.ts";
