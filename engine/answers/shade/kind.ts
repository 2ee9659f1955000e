import { OfOne } from "../docShapes.ts";
import { kind } from "../kind.ts";
import { askRun } from "../run/ask.ts";

/** Who gets the sun: site and sky. */
export const shadeKind = kind({
  doc: OfOne,
  scenarios: ({ scenario }) => [scenario],
  asks: ({ scenario }) => [askRun(scenario)],
  isDrawn: true,
  tell: () => import("./tell.ts").then(({ tellShade }) => tellShade),
});
