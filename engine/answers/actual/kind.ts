import { askOdds } from "../forecast/ask.ts";
import { kind } from "../kind.ts";
import { askRun } from "../run/ask.ts";
import { askActual } from "./ask.ts";
import { ActualDoc } from "./doc.ts";

/** A meter's log over the plan: what it missed, and which figures to correct. */
export const actualKind = kind({
  doc: ActualDoc,
  scenarios: ({ scenario }) => [scenario],
  asks: (doc) => {
    const { scenario, log } = doc;
    return log === undefined ? [askRun(scenario)] : [askRun(scenario), askOdds(scenario), askActual(doc)];
  },
  isDrawn: true,
  question: {
    pass: "seconds",
    choices: ({ log }) => log ?? null,
    place: () => null,
    members: () => 0,
    work: () => import("./work.ts").then(({ workActual }) => workActual),
  },
  tell: () => import("./tell.ts").then(({ tellActual }) => tellActual),
});
