import { OfOne } from "../docShapes.ts";
import { kind } from "../kind.ts";
import { askRun, type RunAsks } from "./ask.ts";

/** One run, step by step. */
export const runKind = kind({
  doc: OfOne,
  scenarios: ({ scenario }) => [scenario],
  asks: ({ scenario }) => [askRun(scenario)],
  isDrawn: true,
  question: {
    pass: "glance",
    choices: ({ whyMs }: OfOne & RunAsks): RunAsks => (whyMs === undefined ? {} : { whyMs }),
    // What was asked of another instant may stand there until this one is known; a run's picture may not.
    place: ({ whyMs }) => (whyMs === undefined ? undefined : "why"),
    runsPerMember: () => 1,
    work: () => import("./work.ts").then(({ workRun }) => workRun),
  },
  first: ([scenario]) => ({ title: "One run, step by step", doc: { scenario } }),
  tell: () => import("./tell.ts").then(({ tellRun }) => tellRun),
});
