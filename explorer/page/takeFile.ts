import type { Notebook } from "../notebook/notebook.ts";
import { freeId } from "../notebook/notebookEdits.ts";
import { MOST_BYTES } from "../notebook/notebookLimits.ts";
import { readNotebook } from "../notebook/readNotebook.ts";
import type { NotebookStore } from "../store/notebookStore.ts";
import { whyUnkept } from "../store/whyUnkept.ts";
import type { Taken } from "./takeIntoNotebook.ts";

/**
 * Opens a notebook or scenario file as a new notebook on the shelf, and goes there.
 * @returns why not, in sentences; none when the page is on its way
 */
export async function takeFile(file: File, store: NotebookStore | null): Promise<readonly string[]> {
  if (file.size > MOST_BYTES) {
    const most = MOST_BYTES / 1e6;
    return [
      `${file.name} has ${(file.size / 1e6).toFixed(0)} MB; notebooks and scenarios have at most ${most} MB. It was not read.`,
    ];
  }
  if (store === null) return ["This browser keeps nothing here, so that no file can be opened beside this notebook."];
  const text = await file.text();
  if (!/^\s*\{/.test(text))
    return [`${file.name} is no notebook and no scenario; weather files go into a notebook that is open.`];
  const shelf = await store.list();
  const read = isScenario(text)
    ? (await import("../notebook/notebookOf.ts")).notebookFromScenario(text, "notebook")
    : readNotebook(text);
  if (!read.ok) return [`${file.name} is not opened.`, ...read.sentences];
  const notebook = { ...read.notebook, id: freeId(read.notebook.title, shelf) };
  try {
    await store.save(notebook, 0, Date.now());
  } catch (error) {
    return [whyUnkept(error)];
  }
  location.search = `?notebook=${notebook.id}`;
  return [];
}

/** No weather file is larger: ten years by the hour. */
const LARGEST_WEATHER_BYTES = 10_000_000;

/**
 * Takes a file into the notebook that is open: a scenario as one more, weather for one of its scenarios. A notebook opens by itself.
 * @param weatherFor the scenario that a weather file is for
 */
export async function takeFileInto(
  file: File,
  store: NotebookStore | null,
  notebook: Notebook,
  weatherFor: string,
): Promise<Taken> {
  if (file.size > LARGEST_WEATHER_BYTES) {
    const size = (file.size / 1e6).toFixed(0);
    return {
      notebook: null,
      sentences: [`${file.name} has ${size} MB; no file of ours has more than 10. It was not read.`],
    };
  }
  const text = await file.text();
  const isJson = /^\s*\{/.test(text);
  if (isJson && !isScenario(text)) {
    if (store !== null) return { notebook: null, sentences: await takeFile(file, store) };
    const read = readNotebook(text);
    return read.ok
      ? {
          notebook: read.notebook,
          sentences: [`${read.notebook.title} stands in place of the other; Undo brings that back.`],
        }
      : { notebook: null, sentences: [`${file.name} is not opened.`, ...read.sentences] };
  }
  const take = await import("./takeIntoNotebook.ts");
  return isJson
    ? take.withScenarioFile(notebook, text, file.name)
    : take.withWeatherFile(notebook, weatherFor, text, file.name);
}

/** A notebook holds scenarios, so the first format that is named is the file's own. */
const isScenario = (text: string) => /"format"\s*:\s*"([^"]*)"/.exec(text)?.[1] === "duskline-scenario";
