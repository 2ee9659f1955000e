/**
 * readings: readings on the page: typed on a phone, learned from, corrected.
 */
export { readingsEntry } from "./entry.ts";
export { draftOf, emptyDraft, readingOf } from "./readingDraft.ts";
