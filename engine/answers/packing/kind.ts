import { kind } from "../kind.ts";
import { askPacking, type PackingChoices, PackingDoc } from "./ask.ts";

/** Sets of a usual list, roughly: so often each member is run. */
const USUAL_SETS = 40;

/** What to take along: which sets of what the club has reach a target, and which of them is least to carry. */
export const packingKind = kind({
  doc: PackingDoc,
  scenarios: ({ scenario, lent }) => [scenario, ...lent],
  without: (doc, lost) =>
    lost.has(doc.scenario) ? null : { ...doc, lent: doc.lent.filter((scenario) => !lost.has(scenario)) },
  asks: (doc) => (doc.stopped === true ? [] : [askPacking(doc)]),
  isDrawn: true,
  question: {
    pass: "map",
    choices: ({ targetIn100, mostMassKg, mostMinutes, mostMoney, most, owned, stopped }): PackingChoices | null =>
      stopped === true
        ? null
        : {
            targetShare: targetIn100 / 100,
            order: most,
            limits: { mass: mostMassKg ?? null, minutes: mostMinutes ?? null, money: mostMoney ?? null },
            owned: owned ?? null,
          },
    members: (drawn) => drawn,
    runsPerMember: () => USUAL_SETS,
    // Another list numbers its things anew, and an older answer would name the wrong ones.
    place: ({ owned }) => owned,
    work: () => import("./work.ts").then(({ workPacking }) => workPacking),
  },
  tell: () => import("./tell.ts").then(({ tellPacking }) => tellPacking),
});
