import { createMemo } from "solid-js";
import { askedBy } from "../../engine/notebook/asked.ts";
import { letterOf } from "../../engine/notebook/letterOf.ts";
import type { Entry, Notebook } from "../../engine/notebook/notebook.ts";
import { entryKindOf } from "../entries/list.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";
import type { EntryState, IndexLine } from "./SheetIndex.tsx";

/**
 * A line for each entry: its letter, what came of it in a few words, and whether that holds.
 * @param isLongWork whether work has lasted so long that it is said
 */
export function makeSheetLines(
  page: NotebookPage,
  notebook: () => Notebook,
  isWorking: () => boolean,
  isLongWork: () => boolean,
): () => readonly IndexLine[] {
  const says = createMemo(() => notebook().entries.map((entry) => summaryOf(entry, page)));
  const stateOf = (entry: Entry): EntryState => {
    const founds = askedBy(entry).map((asked) => page.find(asked));
    if (founds.some(({ problems }) => problems.length > 0)) return "attention";
    if (isLongWork() && founds.some(({ progress }) => progress !== null)) return "working";
    return isLongWork() === isWorking() && founds.some(({ stale }) => stale) ? "stale" : "fresh";
  };
  return createMemo(() =>
    notebook().entries.map(
      (entry, i): IndexLine => ({ entry, letter: letterOf(i), says: says()[i] ?? "", state: stateOf(entry) }),
    ),
  );
}

/** An entry's line in the index; one that cannot be shown says so there too. */
function summaryOf(entry: Entry, page: NotebookPage): string {
  try {
    return entryKindOf(entry.kind).summary({ id: entry.id, doc: entry.doc as never, page, edit: () => null });
  } catch {
    return "cannot be shown";
  }
}
