import { eventLeafShare } from "../../../engine/scenario/leafShareOf.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts";
import { horizonElevationDeg, prepareHorizon } from "../../../engine/shade/horizonElevationDeg.ts";
import type { Point } from "../../../engine/shade/index.ts";
import { boxOutline } from "./boxOutline.ts";
import { crownOutline, type SkySpan } from "./crownOutline.ts";
import { leafLook } from "./leafLook.ts";
import { nearBearing, type SkyView, spanPath } from "./skyView.ts";
import { trunkOutline } from "./trunkOutline.ts";

/** Something that stands in the sky, as a path. */
export interface SkyShape {
  /** Empty where it is part of something that has a name. */
  readonly name: string;
  readonly look: string;
  readonly path: string;
  /** Where its name would stand: the highest of what shows. */
  readonly top: { readonly x: number; readonly y: number } | null;
}

/** What an eye sees stand in the sky, the farthest first: hills, then boxes and trees. */
export function skyShapes(scenario: Scenario, eye: Point, view: SkyView): SkyShape[] {
  const { obstacles } = scenario;
  const seasonShare = eventLeafShare(scenario);
  const shape = (name: string, look: string, spans: readonly SkySpan[]): SkyShape[] => {
    const path = spanPath(view, spans);
    return path === "" ? [] : [{ name, look, path, top: topOf(spans, view) }];
  };
  const far = obstacles.flatMap((obstacle) => {
    if (obstacle.kind !== "horizon") return [];
    const line = prepareHorizon(obstacle);
    const spans = Array.from({ length: 2 * Math.ceil(view.halfDeg) + 1 }, (_, i) => {
      const bearingDeg = view.centreDeg - Math.ceil(view.halfDeg) + i;
      return { bearingDeg, lowDeg: 0, highDeg: horizonElevationDeg(line, bearingDeg) };
    });
    return shape(obstacle.name ?? obstacle.id, "sky-hills", spans);
  });
  const awayM = ({ eastM, northM }: { eastM: number; northM: number }) =>
    Math.hypot(eastM - eye.eastM, northM - eye.northM);
  const near = obstacles
    .flatMap((obstacle) => (obstacle.kind === "horizon" ? [] : [obstacle]))
    .sort((a, b) => awayM(b) - awayM(a))
    .flatMap((obstacle) => {
      const name = obstacle.name ?? obstacle.id;
      if (obstacle.kind === "box") return shape(name, "sky-wall", boxOutline(obstacle, eye));
      const trunk = shape("", "sky-trunk", trunkOutline(obstacle, eye));
      return [...trunk, ...shape(name, `leaf-${leafLook(obstacle, seasonShare)}`, crownOutline(obstacle, eye))];
    });
  return [...far, ...near];
}

function topOf(spans: readonly SkySpan[], view: SkyView): SkyShape["top"] {
  const seen = spans
    .map((span) => ({
      x: view.x(nearBearing(span.bearingDeg, view.centreDeg)),
      y: Math.max(0, view.y(span.highDeg)),
    }))
    .filter(({ x, y }) => x >= 0 && x <= view.widthPx && y < view.heightPx - 1);
  if (seen.length === 0) return null;
  const y = Math.min(...seen.map((point) => point.y));
  // What is cut off at the top of the window, or flat, is named at its middle.
  const level = seen.filter((point) => point.y < y + 0.5).map((point) => point.x);
  return { x: (Math.min(...level) + Math.max(...level)) / 2, y };
}
