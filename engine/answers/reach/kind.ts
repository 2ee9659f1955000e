import { kind } from "../kind.ts";
import { askReach, type ReachChoices, ReachDoc } from "./ask.ts";

/** Runs of each member, roughly: every lever by itself, then pairs and threes. */
const RUNS_PER_MEMBER = 90;

/** What it would take: the least of each lever that reaches a target, or what can stay at home. */
export const reachKind = kind({
  doc: ReachDoc,
  scenarios: ({ scenario, lent }) => [scenario, ...lent],
  without: (doc, lost) =>
    lost.has(doc.scenario) ? null : { ...doc, lent: doc.lent.filter((scenario) => !lost.has(scenario)) },
  asks: (doc) => [askReach(doc)],
  isDrawn: true,
  question: {
    pass: "map",
    choices: ({ targetIn100, most, locked }): ReachChoices => ({
      targetShare: targetIn100 / 100,
      order: most,
      locked,
    }),
    members: (drawn) => drawn,
    runsPerMember: () => RUNS_PER_MEMBER,
    work: () => import("./work.ts").then(({ workReach }) => workReach),
  },
  first: ([scenario, ...others]) => ({
    title: "What would it take?",
    doc: { scenario, targetIn100: 95, most: "money" as const, locked: [], lent: others.slice(0, 4) },
  }),
  tell: () => import("./tell.ts").then(({ tellReach }) => tellReach),
});
