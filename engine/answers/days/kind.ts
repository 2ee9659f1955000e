import { OfOne } from "../docShapes.ts";
import { kind } from "../kind.ts";
import { askRun } from "../run/ask.ts";

/** The days of one run in figures. */
export const daysKind = kind({
  doc: OfOne,
  scenarios: ({ scenario }) => [scenario],
  asks: ({ scenario }) => [askRun(scenario)],
  tell: () => import("./tell.ts").then(({ tellDays }) => tellDays),
});
