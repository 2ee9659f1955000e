import type { Notebook } from "../../engine/notebook/notebook.ts";
import { withChanges } from "../../engine/notebook/notebookEdits.ts";
import { scenarioDocument } from "../../engine/notebook/scenarioDocument.ts";
import type { Change } from "../../engine/scenario/change.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";

export type WeatherText = NonNullable<Notebook["weatherFiles"]>[number];

/** Weather files that one of the notebook's scenarios reads. */
function readFiles(notebook: Notebook): ReadonlySet<string> {
  const names = new Set<string>();
  for (const { id } of notebook.scenarios) {
    const found = scenarioDocument(notebook, id);
    if (found.ok && found.document.weather.kind === "file") names.add(found.document.weather.file);
  }
  return names;
}

/** A notebook whose scenario has its weather from a file that the notebook keeps; files that nothing reads any more go. */
export function withWeather(notebook: Notebook, id: string, file: WeatherText): Notebook {
  const found = scenarioDocument(notebook, id);
  if (!found.ok) return notebook;
  const changed = withChanges(notebook, id, [weatherChange(found.document, file.name)]);
  const others = (notebook.weatherFiles ?? []).filter(({ name }) => name !== file.name);
  const read = readFiles(changed);
  return { ...changed, weatherFiles: [...others.filter(({ name }) => read.has(name)), file] };
}

/** The file's own temperature and wind take the place of what was typed; haze stays. */
function weatherChange({ weather }: ScenarioInput, file: string): Change {
  const { linkeTurbidity } = weather;
  const far = weather.kind === "file" ? weather.maxDistanceKm : undefined;
  return {
    at: "weather",
    to: {
      kind: "file",
      file,
      ...(linkeTurbidity === undefined ? {} : { linkeTurbidity }),
      ...(far === undefined ? {} : { maxDistanceKm: far }),
    },
  };
}
