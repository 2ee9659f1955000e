import type { ScenarioInput } from "../../engine/index.ts";
import { type Asked, askedByAll } from "../notebook/asked.ts";
import type { Notebook } from "../notebook/notebook.ts";
import { scenarioDocument } from "../notebook/scenarioDocument.ts";

/** Steps of members that somebody else's notebook may make a machine go through unasked: some ten seconds of work. */
export const MOST_STEPS_UNASKED = 40_000_000;

/** Cells of a map whose sizes are left to the program. */
const USUAL_CELLS = 28;
/** Runs that finding out what decides takes for each row. */
const RUNS_PER_ROW = 34;
const MINUTE_MS = 60_000;
const USUAL_STEP_MINUTES = 15;

/**
 * How much work a notebook asks for: members times steps, over everything that its entries show. It is told from the documents as they
 * are written, and a document that does not say its times counts as endless.
 */
export function workSteps(notebook: Notebook): number {
  return askedByAll(notebook).reduce((sum, asked) => sum + runs(notebook, asked), 0);
}

function runs(notebook: Notebook, asked: Asked): number {
  const { members } = notebook;
  switch (asked.kind) {
    case "run":
      return steps(notebook, asked.scenario);
    case "versus":
      return members * (steps(notebook, asked.first) + steps(notebook, asked.second));
    case "sizes": {
      const { across, up } = asked.doc;
      const cells = across === undefined && up === undefined ? USUAL_CELLS : lengthOf(across) * lengthOf(up);
      return members * cells * steps(notebook, asked.scenario);
    }
    case "drivers":
      return members * RUNS_PER_ROW * steps(notebook, asked.scenario);
    default:
      return members * steps(notebook, asked.scenario);
  }
}

const lengthOf = (direction: { readonly values: readonly number[] } | undefined) => direction?.values.length ?? 7;

function steps(notebook: Notebook, id: string): number {
  const found = scenarioDocument(notebook, id);
  if (!found.ok) return 0;
  const time = found.document.time as Partial<ScenarioInput["time"]> | undefined;
  const lengthMs = Date.parse(`${time?.end}Z`) - Date.parse(`${time?.start}Z`);
  const minutes = time?.stepMinutes ?? USUAL_STEP_MINUTES;
  return lengthMs > 0 && minutes > 0 ? lengthMs / MINUTE_MS / minutes : Number.POSITIVE_INFINITY;
}
