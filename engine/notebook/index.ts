/**
 * notebook: scenarios, and entries that show what becomes of them, as one document: its schema, how it is read, and its edits.
 */
export { askedBy, askedByAll, leadOf, scenariosOf } from "./asked.ts";
export { firstEntries } from "./firstEntries.ts";
export { headlineOf } from "./headlineOf.ts";
export { letterOf } from "./letterOf.ts";
export { lookOf, looksOf, withLook } from "./looks.ts";
export { type Measured, measured } from "./measured.ts";
export { migrateNotebook } from "./migrateNotebook.ts";
export {
  ChangedScenario,
  type Entry,
  type EntryDoc,
  type EntryKindName,
  EntryShape,
  NOTEBOOK_VERSION,
  Notebook,
  type NotebookScenario,
  WeatherShape,
  WholeScenario,
} from "./notebook.ts";
export {
  changedScenario,
  duplicateEntry,
  editEntry,
  freeId,
  moveEntry,
  whyKept,
  withChanges,
  withEntry,
  withoutChange,
  withoutEntry,
  withoutScenario,
  withScenario,
  withVariant,
} from "./notebookEdits.ts";
export { notebookFrom, problemSentences, readNotebook, whatIsLost } from "./readNotebook.ts";
export { lostChanges, type ScenarioDocument, scenarioDocument, scenarioIn, scenariosIn } from "./scenarioDocument.ts";
export { standingOf } from "./standingOf.ts";
export { whyMisshapen } from "./whyMisshapen.ts";
