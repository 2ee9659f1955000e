import { MOST_BYTES } from "../../engine/answers/notebookLimits.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import { readNotebook } from "../../engine/notebook/readNotebook.ts";
import type { NotebookStore } from "../store/notebookStore.ts";
import { whyUnkept } from "../store/whyUnkept.ts";
import type { Taken } from "./takeIntoNotebook.ts";

/** Why a file is not opened, and the notebook that can be read of it where not all of it can. */
export interface Unopened {
  readonly sentences: readonly string[];
  readonly partly?: Notebook;
}

/**
 * Opens a notebook or scenario file as a new notebook on the shelf, and goes there. It is read whole before, and kept only where all of it
 * can be.
 * @returns why not; no sentence when the page is on its way
 */
export async function takeFile(file: File, store: NotebookStore | null): Promise<Unopened> {
  if (file.size > MOST_BYTES) {
    const most = MOST_BYTES / 1e6;
    const size = (file.size / 1e6).toFixed(0);
    return no(`${file.name} has ${size} MB; notebooks and scenarios have at most ${most} MB. It was not read.`);
  }
  if (store === null) return no("This browser keeps nothing here, so that no file can be opened beside this notebook.");
  const text = await file.text();
  if (!/^\s*\{/.test(text))
    return no(`${file.name} is no notebook and no scenario; weather files go into a notebook that is open.`);
  const read = isScenario(text)
    ? (await import("../start/notebookOf.ts")).notebookFromScenario(text, "notebook")
    : (await import("../notebook/checkedNotebook.ts")).checkedNotebook(text);
  if (!read.ok) return no(`${file.name} is not opened.`, ...read.sentences);
  if ("missing" in read && read.missing.length > 0) {
    const sentences = [`${file.name} is not opened, for not all of it can be read.`, ...read.missing];
    return { sentences: sentences.slice(0, MOST_SENTENCES), partly: read.notebook };
  }
  return openCopy(read.notebook, store);
}

const MOST_SENTENCES = 10;
const no = (...sentences: string[]): Unopened => ({ sentences });

/** Puts a notebook onto the shelf and goes there. */
export async function openCopy(notebook: Notebook, store: NotebookStore): Promise<Unopened> {
  try {
    const { id } = await store.create({ ...notebook, id: freeId(notebook.title, []) }, Date.now());
    location.search = `?notebook=${id}`;
    return no();
  } catch (error) {
    return no(whyUnkept(error));
  }
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
    if (store !== null) {
      const { sentences, partly } = await takeFile(file, store);
      const way = partly === undefined ? [] : ["The shelf opens what can be read of it."];
      return { notebook: null, sentences: [...sentences, ...way] };
    }
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
