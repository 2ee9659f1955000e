import type { Notebook } from "../../engine/notebook/notebook.ts";
import { freeId } from "../../engine/notebook/notebookEdits.ts";
import { scenarioDocument } from "../../engine/notebook/scenarioDocument.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { problemSentences } from "../../engine/words/problemSentences.ts";
import { scenariosOfFile } from "../notebook/scenariosOfFile.ts";
import { keptWeather } from "../weather/keptWeather.ts";
import { withWeather } from "../weather/weatherEdits.ts";

/** The notebook with what a file brought, and what there is to say about it; null where it stays as it was. */
export interface Taken {
  readonly notebook: Notebook | null;
  readonly sentences: readonly string[];
}

const MOST_SENTENCES = 5;

/** Adds the scenario of a file, with its variants and an entry to look at it, at the end of the notebook. */
export function withScenarioFile(notebook: Notebook, text: string, fileName: string): Taken {
  const read = readScenario(text);
  if (!read.ok) {
    const problems = problemSentences(read.problems, MOST_SENTENCES);
    return { notebook: null, sentences: [`${fileName} is not taken in.`, ...problems] };
  }
  const source = JSON.parse(text) as ScenarioInput;
  const name = (source.name || "A plan").slice(0, 120);
  const id = freeId(name, notebook.scenarios);
  const made = scenariosOfFile(source, { id, name }, notebook.scenarios);
  const scenarios = [...notebook.scenarios, ...(made as unknown as Notebook["scenarios"])];
  const entry = {
    id: freeId("scenario", notebook.entries),
    kind: "scenario" as const,
    title: name,
    doc: { scenario: id },
  };
  const others = made.length === 1 ? "" : ` and ${made.length - 1} based on it`;
  return {
    notebook: { ...notebook, scenarios, entries: [...notebook.entries, entry] },
    sentences: [`${name}${others} came in from ${fileName}; the entry is at the end.`],
  };
}

/** Lets a scenario have its weather from a file. */
export function withWeatherFile(notebook: Notebook, id: string, text: string, fileName: string): Taken {
  const found = scenarioDocument(notebook, id);
  if (!found.ok) return { notebook: null, sentences: [found.sentence] };
  const kept = keptWeather(text, fileName, found.document);
  if (!kept.ok) return { notebook: null, sentences: [`${fileName} is not taken in.`, ...kept.sentences] };
  const name = notebook.scenarios.find((scenario) => scenario.id === id)!.name;
  const next = withWeather(notebook, id, { name: kept.name, text: kept.text });
  return { notebook: next, sentences: [...kept.sentences, `${name} has its weather from it now.`] };
}
