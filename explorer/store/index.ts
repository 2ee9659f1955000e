/**
 * store: notebooks kept in this browser, and what a tab says of keeping them.
 */
export { askToPersist } from "./askToPersist.ts";
export { type KeeperState, makeKeeper } from "./makeKeeper.ts";
export { type Held, type Kept, type NotebookStore, type OnShelf, openNotebookStore } from "./notebookStore.ts";
export { ownStore } from "./ownStore.ts";
export { whyUnkept } from "./whyUnkept.ts";
