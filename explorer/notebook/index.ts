/**
 * notebook: a notebook as it is edited: state, history, its text as a file, what can be saved of a broken one, and what an entry is given.
 */
export { checkedNotebook } from "./checkedNotebook.ts";
export type { EntryKind, EntryProps } from "./entryKind.ts";
export { exampleNotebook } from "./exampleNotebook.ts";
export { firstOf, secondOf } from "./firstOf.ts";
export { makeHistory } from "./makeHistory.ts";
export { makeNotebook, type NotebookState } from "./makeNotebook.ts";
export type { NotebookPage, SheetRoom, WhyOf } from "./notebookPage.ts";
export { notebookText } from "./notebookText.ts";
export { salvagedNotebook } from "./salvage/salvagedNotebook.ts";
export { scenariosOfFile } from "./scenariosOfFile.ts";
export { MOST_DAYS_PX, sheetRoom } from "./sheetRoom.ts";
export { whyNotKept } from "./whyNotKept.ts";
