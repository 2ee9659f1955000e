import { OfOne } from "../docShapes.ts";
import { kind } from "../kind.ts";
import { askRun } from "./ask.ts";

/** One run, step by step. */
export const runKind = kind({
  doc: OfOne,
  scenarios: ({ scenario }) => [scenario],
  asks: ({ scenario }) => [askRun(scenario)],
  isDrawn: true,
  question: {
    pass: "glance",
    choices: () => ({}),
    runsPerMember: () => 1,
    work: () => import("./work.ts").then(({ workRun }) => workRun),
  },
  first: ([scenario]) => ({ title: "One run, step by step", doc: { scenario } }),
  tell: () => import("./tell.ts").then(({ tellRun }) => tellRun),
});
