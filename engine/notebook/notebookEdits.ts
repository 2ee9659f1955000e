import { kindOf } from "../answers/kinds.ts";
import { applyChanges } from "../scenario/applyChanges.ts";
import type { Change } from "../scenario/change.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";
import { scenariosOf } from "./asked.ts";
import { followedChanges } from "./followedChanges.ts";
import { looksOf, withLooks } from "./looks.ts";
import type { Entry, Notebook, NotebookScenario } from "./notebook.ts";
import { scenarioDocument, scenarioIn } from "./scenarioDocument.ts";

/** Every edit is a new notebook that shares with the old one whatever did not change: undo keeps the old ones. */

type Scenarios = Notebook["scenarios"];

/** An id that nothing in the list has: "note", "note-2", … */
export function freeId(wanted: string, taken: readonly { readonly id: string }[]): string {
  const stem =
    wanted
      .normalize("NFKD")
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-+|-+$/g, "")
      .slice(0, 32) || "thing";
  const has = (id: string) => taken.some((each) => each.id === id);
  if (!has(stem)) return stem;
  let number = 2;
  while (has(`${stem}-${number}`)) number++;
  return `${stem}-${number}`;
}

export function withEntry(notebook: Notebook, entry: Entry, at: number): Notebook {
  return { ...notebook, entries: [...notebook.entries.slice(0, at), entry, ...notebook.entries.slice(at)] };
}

export function withoutEntry(notebook: Notebook, id: string): Notebook {
  return { ...notebook, entries: notebook.entries.filter((entry) => entry.id !== id) };
}

/** Puts an entry where it will stand at place `to` of the list. */
export function moveEntry(notebook: Notebook, id: string, to: number): Notebook {
  const from = notebook.entries.findIndex((entry) => entry.id === id);
  const target = Math.min(notebook.entries.length - 1, Math.max(0, to));
  if (from < 0 || from === target) return notebook;
  const entries = notebook.entries.filter((entry) => entry.id !== id);
  entries.splice(target, 0, notebook.entries[from]!);
  return { ...notebook, entries };
}

export function editEntry(notebook: Notebook, id: string, change: Partial<Entry>): Notebook {
  const entries = notebook.entries.map((entry) => (entry.id === id ? ({ ...entry, ...change } as Entry) : entry));
  return { ...notebook, entries };
}

export function duplicateEntry(notebook: Notebook, id: string): Notebook {
  const at = notebook.entries.findIndex((entry) => entry.id === id);
  const entry = notebook.entries[at];
  if (entry === undefined) return notebook;
  return withEntry(notebook, { ...entry, id: freeId(entry.kind, notebook.entries) }, at + 1);
}

/** Works changes into a scenario: into its document, or onto its list, where a later change of a place takes the earlier one's. */
export function changedScenario(scenario: NotebookScenario, changes: readonly Change[]): NotebookScenario {
  if ("document" in scenario) {
    const changed = applyChanges(scenario.document, changes);
    return changed.ok ? { ...scenario, document: changed.document as ScenarioInput } : scenario;
  }
  const list = [...scenario.changes];
  for (const change of changes) {
    const same = list.findIndex((each) => each.at === change.at && each.to !== undefined && change.to !== undefined);
    if (same >= 0) list[same] = change;
    else list.push(change);
  }
  return { ...scenario, changes: list };
}

export function withScenario(notebook: Notebook, scenario: NotebookScenario): Notebook {
  const known = notebook.scenarios.some(({ id }) => id === scenario.id);
  const as = scenario as unknown as Scenarios[number];
  if (known) {
    return { ...notebook, scenarios: notebook.scenarios.map((each) => (each.id === scenario.id ? as : each)) };
  }
  return withLooks({ ...notebook, scenarios: [...notebook.scenarios, as] });
}

/** A new scenario based on another; left alone, with nothing changed yet. */
export function withVariant(
  notebook: Notebook,
  basedOn: string,
  changes: readonly Change[] = [],
  wantedName?: string,
): { notebook: Notebook; id: string } {
  const base = scenarioIn(notebook, basedOn);
  const name = (wantedName ?? `${base?.name ?? "Scenario"}, changed`).slice(0, 120);
  const id = freeId(name, notebook.scenarios);
  return { id, notebook: withScenario(notebook, { id, name, basedOn, changes }) };
}

/** Works changes into one scenario; those that are based on it go on meaning what they meant. */
export function withChanges(notebook: Notebook, id: string, changes: readonly Change[]): Notebook {
  const scenario = scenarioIn(notebook, id);
  if (scenario === null) return notebook;
  const found = scenarioDocument(notebook, id);
  let next = withScenario(notebook, changedScenario(scenario, changes));
  if (!found.ok) return next;
  for (const heir of heirsOf(notebook, id)) {
    const followed = followedChanges(heir.changes, changes, found.document);
    if (JSON.stringify(followed) !== JSON.stringify(heir.changes))
      next = withScenario(next, { ...heir, changes: followed });
  }
  return next;
}

/** Takes one change out of the list of a scenario that is based on another. */
export function withoutChange(notebook: Notebook, id: string, number: number): Notebook {
  const scenario = scenarioIn(notebook, id);
  if (scenario === null || "document" in scenario) return notebook;
  return withScenario(notebook, { ...scenario, changes: scenario.changes.filter((_, each) => each !== number) });
}

type Heir = Extract<NotebookScenario, { basedOn: string }>;

/** Scenarios that are based on one, directly or by way of others. */
function heirsOf(notebook: Notebook, id: string): Heir[] {
  const heirs: Heir[] = [];
  for (const open = [id]; open.length > 0; ) {
    const base = open.pop();
    for (const each of notebook.scenarios as readonly NotebookScenario[]) {
      if ("document" in each || each.basedOn !== base || heirs.includes(each)) continue;
      heirs.push(each);
      open.push(each.id);
    }
  }
  return heirs;
}

/** Why a scenario cannot be taken out; null when it can. */
export function whyKept(notebook: Notebook, id: string): string | null {
  if (notebook.scenarios.length === 1) return "A notebook has at least one scenario.";
  const heir = notebook.scenarios.find((scenario) => "basedOn" in scenario && scenario.basedOn === id);
  if (heir !== undefined) return `${heir.name} is based on it.`;
  const reader = notebook.entries.find(
    (entry) => kindOf(entry.kind).goesWithScenario !== true && scenariosOf(entry).includes(id),
  );
  if (reader !== undefined) return `The entry “${reader.title}” shows it.`;
  const quoter = notebook.entries.find(({ kind, doc }) => kindOf(kind).mentions?.(doc).includes(id));
  return quoter === undefined ? null : `The note “${quoter.title}” quotes it.`;
}

/** Takes out a scenario that nothing needs, and the entries in which it is edited; its look goes to the first that has none. */
export function withoutScenario(notebook: Notebook, id: string): Notebook {
  if (whyKept(notebook, id) !== null) return notebook;
  return withLooks({
    ...notebook,
    looks: looksOf(notebook),
    scenarios: notebook.scenarios.filter((scenario) => scenario.id !== id),
    entries: notebook.entries.filter((entry) => !scenariosOf(entry).includes(id)),
  });
}
