import type { Change, ScenarioInput } from "../../engine/index.ts";
import { makeHistory } from "../plan/makeHistory.ts";
import type { Notebook, NotebookScenario } from "./notebook.ts";
import { changedScenario, withChanges, withScenario } from "./notebookEdits.ts";
import { scenarioDocument, scenarioIn } from "./scenarioDocument.ts";

/** A notebook with everything one can do to it: each edit is one step that undo takes back. */
export function makeNotebook(first: Notebook, nowMs?: () => number) {
  const history = makeHistory(first, nowMs);
  /** What a run of edits to one field starts from. */
  let anchor: { field: string; scenario: NotebookScenario; document: ScenarioInput } | null = null;

  function settle(): void {
    anchor = null;
    history.settle();
  }

  /** Puts another notebook in place; edits of one `field` that follow one another are one step. */
  function edit(field: string, next: Notebook): void {
    if (next === history.now()) return;
    anchor = null;
    history.edit(field, next);
  }

  return {
    now: history.now,
    before: history.before,
    canUndo: history.canUndo,
    canRedo: history.canRedo,
    settle,
    edit,
    /** One step of its own, whatever came before. */
    act(next: Notebook): void {
      if (next === history.now()) return;
      settle();
      history.edit("act", next);
      history.settle();
    },
    undo(): void {
      anchor = null;
      history.undo();
    },
    redo(): void {
      anchor = null;
      history.redo();
    },
    change(id: string, changes: readonly Change[], label: string): void {
      const scenario = scenarioIn(history.now(), id);
      if (scenario === null || changes.length === 0) return;
      edit(`${id}: ${label}`, withChanges(history.now(), id, changes));
    },
    turn(id: string, field: string, changes: (document: ScenarioInput) => readonly Change[]): void {
      const name = `${id}.${field}`;
      if (anchor?.field !== name) {
        const scenario = scenarioIn(history.now(), id);
        const found = scenarioDocument(history.now(), id);
        if (scenario === null || !found.ok) return;
        anchor = { field: name, scenario, document: found.document };
      }
      const { scenario, document } = anchor;
      const next = changedScenario(scenario, changes(document));
      if (JSON.stringify(next) === JSON.stringify(scenarioIn(history.now(), id))) return;
      history.edit(name, withScenario(history.now(), next));
    },
  };
}

export type NotebookState = ReturnType<typeof makeNotebook>;
