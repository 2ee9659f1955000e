import { OfOne } from "../docShapes.ts";
import { kind } from "../kind.ts";
import { askRun } from "../run/ask.ts";

/** Who gets the sun: site and sky. */
export const shadeKind = kind({
  doc: OfOne,
  scenarios: ({ scenario }) => [scenario],
  asks: ({ scenario }) => [askRun(scenario)],
  isDrawn: true,
  first: ([scenario], { obstacles = [] }) =>
    obstacles.some(({ kind: what }) => what !== "horizon") ? { title: "Who gets the sun", doc: { scenario } } : null,
  tell: () => import("./tell.ts").then(({ tellShade }) => tellShade),
});
