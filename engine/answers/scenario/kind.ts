import { OfOne } from "../docShapes.ts";
import { kind } from "../kind.ts";
import { askRun } from "../run/ask.ts";

/** What is planned, and every field of it. */
export const scenarioKind = kind({
  doc: OfOne,
  scenarios: ({ scenario }) => [scenario],
  asks: ({ scenario }) => [askRun(scenario)],
  goesWithScenario: true,
  first: ([scenario]) => ({ title: "The plan", doc: { scenario } }),
  tell: () => import("./tell.ts").then(({ tellScenario }) => tellScenario),
});
