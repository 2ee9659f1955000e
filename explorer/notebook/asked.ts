import { figuresIn } from "../entries/note/noteFigures.ts";
import type { Entry, EntryDoc, Notebook } from "./notebook.ts";
import type { Found, NotebookPage } from "./notebookPage.ts";
import { scenariosOf } from "./readNotebook.ts";

/** Something that an entry needs to have worked out, by the scenarios' ids. */
export type Asked =
  | { readonly kind: "run" | "odds" | "drivers"; readonly scenario: string }
  | { readonly kind: "sizes"; readonly scenario: string; readonly doc: EntryDoc<"sizing"> }
  | { readonly kind: "limits"; readonly scenario: string; readonly doc: EntryDoc<"limits"> }
  | { readonly kind: "learned"; readonly scenario: string; readonly doc: EntryDoc<"readings"> }
  | { readonly kind: "actual"; readonly scenario: string; readonly doc: EntryDoc<"actual"> }
  | { readonly kind: "versus"; readonly first: string; readonly second: string };

/** What one entry needs. */
export function askedBy(entry: Entry): Asked[] {
  switch (entry.kind) {
    case "forecast":
      return entry.doc.scenarios.map((scenario) => ({ kind: "odds", scenario }));
    case "versus":
      return [{ kind: "versus", first: entry.doc.first, second: entry.doc.second }];
    case "sizing":
      return [{ kind: "sizes", scenario: entry.doc.scenario, doc: entry.doc }];
    case "limits":
      return [{ kind: "limits", scenario: entry.doc.scenario, doc: entry.doc }];
    case "readings": {
      const { scenario, readings } = entry.doc;
      return readings.length === 0
        ? [{ kind: "run", scenario }]
        : [
            { kind: "run", scenario },
            { kind: "learned", scenario, doc: entry.doc },
          ];
    }
    case "actual": {
      const { scenario, log } = entry.doc;
      return log === undefined
        ? [{ kind: "run", scenario }]
        : [
            { kind: "run", scenario },
            { kind: "odds", scenario },
            { kind: "actual", scenario, doc: entry.doc },
          ];
    }
    case "drivers":
      return [{ kind: "drivers", scenario: entry.doc.scenario }];
    case "note":
      return figuresIn(entry.doc.text).flatMap((figure): Asked[] =>
        figure.over === null
          ? [{ kind: figure.of === "run" ? "run" : "odds", scenario: figure.scenario }]
          : [{ kind: "versus", first: figure.over, second: figure.scenario }],
      );
    case "cautions":
      return [];
    default:
      return [{ kind: "run", scenario: entry.doc.scenario }];
  }
}

/** What the whole notebook needs, each thing once; the run that the ruler is taken from comes first. */
export function askedByAll(notebook: Notebook): Asked[] {
  const all: Asked[] = [{ kind: "run", scenario: leadOf(notebook) }, ...notebook.entries.flatMap(askedBy)];
  const seen = new Set<string>();
  return all.filter((asked) => {
    const key = JSON.stringify(asked);
    return !seen.has(key) && seen.add(key);
  });
}

/** The scenario that gives the sheet its ruler: the first that any entry shows. */
export function leadOf(notebook: Notebook): string {
  for (const entry of notebook.entries) {
    const [first] = scenariosOf(entry);
    if (first !== undefined) return first;
  }
  return notebook.scenarios[0]!.id;
}

/** What is known of something asked. */
export function foundOf(page: NotebookPage, asked: Asked): Found<unknown> {
  switch (asked.kind) {
    case "versus":
      return page.versus(asked.first, asked.second);
    case "sizes":
      return page.sizes(asked.doc);
    case "limits":
      return page.limits(asked.doc);
    case "learned":
      return page.learned(asked.doc);
    case "actual":
      return page.actual(asked.doc);
    default:
      return page[asked.kind](asked.scenario);
  }
}
