import { RAD_PER_DEG } from "../../../engine/angle.ts";
import type { Tree } from "../../../engine/scenario/obstacle.ts";
import type { Point } from "../../../engine/shade/index.ts";
import type { SkySpan } from "./crownOutline.ts";

/** A trunk as an eye at `point` sees it, from the ground to where the crown begins; empty from inside or above it. */
export function trunkOutline(tree: Tree, point: Point): SkySpan[] {
  const awayM = Math.hypot(tree.eastM - point.eastM, tree.northM - point.northM);
  if (awayM <= tree.trunkRadiusM || tree.crownBaseM <= point.upM) return [];
  const middleDeg = Math.atan2(tree.eastM - point.eastM, tree.northM - point.northM) / RAD_PER_DEG;
  const halfDeg = Math.asin(tree.trunkRadiusM / awayM) / RAD_PER_DEG;
  const lowDeg = Math.atan2(-point.upM, awayM) / RAD_PER_DEG;
  const highDeg = Math.atan2(tree.crownBaseM - point.upM, awayM) / RAD_PER_DEG;
  return [-halfDeg, halfDeg].map((aside) => ({ bearingDeg: middleDeg + aside, lowDeg, highDeg }));
}
