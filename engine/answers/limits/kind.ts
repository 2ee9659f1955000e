import { kind } from "../kind.ts";
import { askLimits, limitOptions } from "./ask.ts";
import { LimitsDoc } from "./doc.ts";

/** Fuses, wires, panel volts, volts at the radios: what is over and what to change. */
export const limitsKind = kind({
  doc: LimitsDoc,
  scenarios: ({ scenario }) => [scenario],
  asks: (doc) => [askLimits(doc)],
  question: {
    pass: "glance",
    choices: limitOptions,
    work: () => import("./work.ts").then(({ workLimits }) => workLimits),
  },
  isDrawn: true,
  tell: () => import("./tell.ts").then(({ tellLimits }) => tellLimits),
});
