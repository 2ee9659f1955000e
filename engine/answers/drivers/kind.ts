import { OfOne } from "../docShapes.ts";
import { kind } from "../kind.ts";
import { askDrivers } from "./ask.ts";

/** Rows of the sample: the notebook's own members, so that a scenario has one number everywhere; each is run many times over. */
const MOST_ROWS = 2000;
/** Runs that finding out what decides takes for each row. */
const RUNS_PER_ROW = 34;

/** What decides it, and what to switch off first. */
export const driversKind = kind({
  doc: OfOne,
  scenarios: ({ scenario }) => [scenario],
  asks: ({ scenario }) => [askDrivers(scenario)],
  isDrawn: true,
  question: {
    pass: "map",
    choices: () => ({}),
    members: (drawn) => Math.min(MOST_ROWS, drawn),
    runsPerMember: () => RUNS_PER_ROW,
    work: () => import("./work.ts").then(({ workDrivers }) => workDrivers),
  },
  tell: () => import("./tell.ts").then(({ tellDrivers }) => tellDrivers),
});
