import { kind } from "../kind.ts";
import { askVersus, FEWEST_COLUMNS, MOST_COLUMNS, type VersusChoices, VersusDoc } from "./ask.ts";

/** Two to four scenarios held against the first of them. Asked for pair by pair, so that entries and notes share the answers. */
export const versusKind = kind({
  doc: VersusDoc,
  scenarios: ({ scenarios }) => scenarios,
  without: ({ scenarios }, lost) => {
    const rest = scenarios.filter((id) => !lost.has(id));
    return rest.length < FEWEST_COLUMNS ? null : { scenarios: rest };
  },
  asks: ({ scenarios: [first, ...others] }) => others.map((other) => askVersus(first!, other)),
  isDrawn: true,
  question: {
    pass: "skies",
    choices: (): VersusChoices => ({}),
    members: (drawn) => drawn,
    work: () => import("./work.ts").then(({ workVersus }) => workVersus),
  },
  first: (scenarios) =>
    scenarios.length < FEWEST_COLUMNS
      ? null
      : { title: "What does it change?", doc: { scenarios: scenarios.slice(0, MOST_COLUMNS) } },
  tell: () => import("./tell.ts").then(({ tellVersus }) => tellVersus),
});
