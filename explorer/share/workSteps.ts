import type { Asked } from "../../engine/answers/asked.ts";
import { kindOf } from "../../engine/answers/kinds.ts";
import { askedByAll } from "../../engine/notebook/asked.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { scenarioIn } from "../../engine/notebook/scenarioDocument.ts";
import { applyChanges } from "../../engine/scenario/applyChanges.ts";

/** Steps of members that somebody else's notebook may make a machine go through unasked: some ten seconds of work. */
export const MOST_STEPS_UNASKED = 40_000_000;

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

function runs({ members }: Notebook, { kind, doc }: Asked, steps: (id: string) => number): number {
  const { question, scenarios } = kindOf(kind);
  const choices = question?.choices(doc) ?? null;
  if (question === undefined || choices === null) return 0;
  const drawn = Math.max(1, question.members?.(members) ?? 1);
  const each = question.runsPerMember?.(choices) ?? 1;
  return drawn * each * scenarios(doc).reduce((sum, id) => sum + steps(id), 0);
}

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
