import { applyChanges } from "../../engine/index.ts";
import { type Asked, askedByAll } from "../notebook/asked.ts";
import type { Notebook } from "../notebook/notebook.ts";
import { scenarioIn } from "../notebook/scenarioDocument.ts";

/** Steps of members that somebody else's notebook may make a machine go through unasked: some ten seconds of work. */
export const MOST_STEPS_UNASKED = 40_000_000;

/** Cells of a map whose sizes are left to the program. */
const USUAL_CELLS = 28;
/** Runs that finding out what decides takes for each row. */
const RUNS_PER_ROW = 34;
const MINUTE_MS = 60_000;
const USUAL_STEP_MINUTES = 15;

/**
 * How much work a notebook asks for: members times steps, over everything that its entries show. It is told from the times in the
 * documents as they are written, and a document that does not say its times counts as endless. Each scenario is looked at once.
 */
export function workSteps(notebook: Notebook): number {
  const steps = makeSteps(notebook);
  return askedByAll(notebook).reduce((sum, asked) => sum + runs(notebook, asked, steps), 0);
}

function runs(notebook: Notebook, asked: Asked, steps: (id: string) => number): number {
  const { members } = notebook;
  switch (asked.kind) {
    case "run":
      return steps(asked.scenario);
    case "versus":
      return members * (steps(asked.first) + steps(asked.second));
    case "sizes": {
      const { across, up } = asked.doc;
      const cells = across === undefined && up === undefined ? USUAL_CELLS : lengthOf(across) * lengthOf(up);
      return members * cells * steps(asked.scenario);
    }
    case "drivers":
      return members * RUNS_PER_ROW * steps(asked.scenario);
    default:
      return members * steps(asked.scenario);
  }
}

const lengthOf = (direction: { readonly values: readonly number[] } | undefined) => direction?.values.length ?? 7;

/** What of a scenario's times counts here; what is no time at all is left out, whatever its size. */
interface Times {
  readonly start?: string;
  readonly end?: string;
  readonly stepMinutes?: number;
}

/** Steps of one run of a scenario, by its id. */
function makeSteps(notebook: Notebook): (id: string) => number {
  const known = new Map<string, Times | null>();
  /** A chain of scenarios is as long as the list of them at most, and none is based on itself: reading the notebook made sure. */
  const timesOf = (id: string): Times | null => {
    const before = known.get(id);
    if (before !== undefined) return before;
    const scenario = scenarioIn(notebook, id);
    let times: Times | null = null;
    if (scenario !== null && "document" in scenario) times = timesIn(scenario.document);
    else if (scenario !== null) {
      const changes = scenario.changes.filter(({ at }) => at === "time" || at.startsWith("time."));
      const base = timesOf(scenario.basedOn);
      const changed = base === null ? null : applyChanges({ time: base }, changes);
      times = changed?.ok === true ? timesIn(changed.document) : null;
    }
    known.set(id, times);
    return times;
  };
  return (id) => {
    const times = timesOf(id);
    if (times === null) return 0; // nothing can be worked out of it
    const lengthMs = Date.parse(`${times.end}Z`) - Date.parse(`${times.start}Z`);
    const minutes = times.stepMinutes ?? USUAL_STEP_MINUTES;
    return lengthMs > 0 && minutes > 0 ? lengthMs / MINUTE_MS / minutes : Number.POSITIVE_INFINITY;
  };
}

function timesIn(document: unknown): Times {
  const { start, end, stepMinutes } = { ...((document as { time?: Record<string, unknown> }).time ?? {}) };
  return {
    ...(typeof start === "string" && start.length < 40 ? { start } : {}),
    ...(typeof end === "string" && end.length < 40 ? { end } : {}),
    ...(typeof stepMinutes === "number" ? { stepMinutes } : {}),
  };
}
