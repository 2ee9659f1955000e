import { freeId } from "../notebook/notebookEdits.ts";
import { readNotebook } from "../notebook/readNotebook.ts";
import type { NotebookStore } from "../store/notebookStore.ts";

/** No notebook and no scenario is larger; anything that is, is not read at all. */
const LARGEST_BYTES = 4_000_000;

/**
 * Opens a notebook or scenario file as a new notebook on the shelf, and goes there.
 * @returns why not, in sentences; none when the page is on its way
 */
export async function takeFile(file: File, store: NotebookStore | null): Promise<readonly string[]> {
  if (file.size > LARGEST_BYTES) {
    return [
      `${file.name} has ${(file.size / 1e6).toFixed(0)} MB; notebooks and scenarios have at most 4 MB. It was not read.`,
    ];
  }
  if (store === null) return ["This browser keeps nothing here, so that no file can be opened beside this notebook."];
  const text = await file.text();
  const shelf = await store.list();
  // A notebook holds scenarios, so the first format that is named is the file's own.
  const isScenario = /"format"\s*:\s*"([^"]*)"/.exec(text)?.[1] === "duskline-scenario";
  const read = isScenario
    ? (await import("../notebook/notebookOf.ts")).notebookFromScenario(text, "notebook")
    : readNotebook(text);
  if (!read.ok) return [`${file.name} is not opened.`, ...read.sentences];
  const notebook = { ...read.notebook, id: freeId(read.notebook.title, shelf) };
  await store.save(notebook, 0, Date.now());
  location.search = `?notebook=${notebook.id}`;
  return [];
}
