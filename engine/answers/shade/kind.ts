import { kind } from "../kind.ts";
import { askRun } from "../run/ask.ts";
import { askSpots, ShadeDoc, type SpotsChoices } from "./ask.ts";

/** Who gets the sun: site and sky; and for one panel group where it would get most. */
export const shadeKind = kind({
  doc: ShadeDoc,
  scenarios: ({ scenario }) => [scenario],
  asks: (doc) => [askRun(doc.scenario), ...(doc.spots === undefined ? [] : [askSpots(doc)])],
  isDrawn: true,
  question: {
    pass: "seconds",
    choices: ({ spots }): SpotsChoices | null => (spots === undefined ? null : { group: spots }),
    // What one group brings says nothing of another.
    place: ({ group }) => group,
    work: () => import("./work.ts").then(({ workSpots }) => workSpots),
  },
  first: ([scenario], { obstacles = [] }) =>
    obstacles.some(({ kind: what }) => what !== "horizon") ? { title: "Who gets the sun", doc: { scenario } } : null,
  tell: () => import("./tell.ts").then(({ tellShade }) => tellShade),
});
