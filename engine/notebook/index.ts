/**
 * notebook: scenarios, and entries that show what becomes of them, as one document: its schema, how it is read, and its edits.
 */
export { askedBy, askedByAll, leadOf, scenariosOf } from "./asked.ts";
export { headlineOf } from "./headlineOf.ts";
export { type Entry, type EntryDoc, type EntryKindName, Notebook } from "./notebook.ts";
export { notebookFrom, type ReadNotebook, readNotebook } from "./readNotebook.ts";
export { scenarioDocument, scenarioIn } from "./scenarioDocument.ts";
