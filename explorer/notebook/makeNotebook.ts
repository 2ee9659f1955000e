import { createSignal } from "solid-js";
import type { Notebook, NotebookScenario } from "../../engine/notebook/notebook.ts";
import { changedScenario, withChanges, withScenario } from "../../engine/notebook/notebookEdits.ts";
import { scenarioDocument, scenarioIn } from "../../engine/notebook/scenarioDocument.ts";
import type { Change } from "../../engine/scenario/change.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { makeHistory } from "./makeHistory.ts";
import { whyNotKept } from "./whyNotKept.ts";

/**
 * A notebook with everything one can do to it: each edit is one step that undo takes back. An edit beyond what a notebook holds is
 * not made; whoever asked for it is told why, and `refusal` says it until the next one is made.
 */
export function makeNotebook(first: Notebook, nowMs?: () => number) {
  const history = makeHistory(first, nowMs);
  /** What a run of edits to one field starts from. */
  const [refusal, setRefusal] = createSignal<string | null>(null);
  let anchor: { field: string; scenario: NotebookScenario; document: ScenarioInput } | null = null;

  function settle(): void {
    anchor = null;
    history.settle();
  }

  function put(field: string, next: Notebook): string | null {
    const why = whyNotKept(next, history.now());
    setRefusal(why);
    if (why === null) history.edit(field, next);
    return why;
  }

  /** Puts another notebook in place; edits of one `field` that follow one another are one step. @returns why it is not made */
  function edit(field: string, next: Notebook): string | null {
    if (next === history.now()) return null;
    anchor = null;
    return put(field, next);
  }

  return {
    now: history.now,
    before: history.before,
    canUndo: history.canUndo,
    canRedo: history.canRedo,
    settle,
    edit,
    /** Why the last edit was not made; null when it was. */
    refusal,
    /** Takes the refusal as read. */
    forgetRefusal: () => setRefusal(null),
    /** One step of its own, whatever came before. @returns why it is not made */
    act(next: Notebook): string | null {
      if (next === history.now()) return null;
      settle();
      const why = put("act", next);
      history.settle();
      return why;
    },
    /** Shows what the store keeps, as another tab has written it. */
    takeOver(next: Notebook): void {
      settle();
      history.edit("act", next);
      history.settle();
    },
    undo(): void {
      anchor = null;
      setRefusal(null);
      history.undo();
    },
    redo(): void {
      anchor = null;
      setRefusal(null);
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
      put(name, withScenario(history.now(), next));
    },
  };
}

export type NotebookState = ReturnType<typeof makeNotebook>;
