import { OfOne } from "../docShapes.ts";
import { kind } from "../kind.ts";
import { askRun } from "../run/ask.ts";

/** Where the energy went. */
export const ledgerKind = kind({
  doc: OfOne,
  scenarios: ({ scenario }) => [scenario],
  asks: ({ scenario }) => [askRun(scenario)],
  isDrawn: true,
  first: ([scenario]) => ({ title: "Where the energy went", doc: { scenario } }),
  tell: () => import("./tell.ts").then(({ tellLedger }) => tellLedger),
});
