import { kind } from "../kind.ts";
import { askVersus, type VersusChoices, VersusDoc } from "./ask.ts";

/** Two scenarios held against one another. */
export const versusKind = kind({
  doc: VersusDoc,
  scenarios: ({ first, second }) => [first, second],
  asks: ({ first, second }) => [askVersus(first, second)],
  isDrawn: true,
  question: {
    pass: "skies",
    choices: (): VersusChoices => ({}),
    members: (drawn) => drawn,
    work: () => import("./work.ts").then(({ workVersus }) => workVersus),
  },
  first: ([base, other]) =>
    other === undefined ? null : { title: "What does it change?", doc: { first: base, second: other } },
  tell: () => import("./tell.ts").then(({ tellVersus }) => tellVersus),
});
