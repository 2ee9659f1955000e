import { RAD_PER_DEG } from "../../../engine/angle.ts";
import type { Tree } from "../../../engine/scenario/obstacle.ts";
import type { Point } from "../../../engine/shade/index.ts";

/** On one bearing, what something covers of the sky. Bearings run on past 360 and below 0 rather than jump. */
export interface SkySpan {
  readonly bearingDeg: number;
  readonly lowDeg: number;
  readonly highDeg: number;
}

const SAMPLES = 49;

/**
 * A crown as an eye at `point` sees it, bearing by bearing. On a bearing the rays with tangent t of elevation touch the
 * ellipsoid where s²(u² − c)t² + 2 l u s t + (l² − c) = 0: l the level offset along the bearing, s the stretch that makes
 * the crown a sphere, u the eye's stretched height over its centre, c the squared distance less the squared radius.
 * @returns an empty list when the crown lies wholly below the eye's level or the eye is inside it
 */
export function crownOutline(tree: Tree, point: Point): SkySpan[] {
  const halfHeightM = (tree.heightM - tree.crownBaseM) / 2;
  const stretch = tree.crownRadiusM / halfHeightM;
  const east = tree.eastM - point.eastM;
  const north = tree.northM - point.northM;
  const radiusSq = tree.crownRadiusM ** 2;
  const awaySq = east * east + north * north;
  const up = (point.upM - tree.crownBaseM - halfHeightM) * stretch;
  const c = awaySq + up * up - radiusSq;
  if (c <= 0) return [];
  const middleDeg = Math.atan2(east, north) / RAD_PER_DEG;
  const isBeneath = awaySq <= radiusSq;
  if (isBeneath && up >= 0) return [];
  const reachDeg = isBeneath ? 180 : Math.asin(tree.crownRadiusM / Math.sqrt(awaySq)) / RAD_PER_DEG;
  const a = stretch * stretch * (radiusSq - awaySq);
  const spans = Array.from({ length: SAMPLES }, (_, i): SkySpan => {
    const along = (2 * i) / (SAMPLES - 1) - 1;
    // Close together at the sides, where the outline turns.
    const asideDeg = reachDeg * (isBeneath ? along : Math.sin((along * Math.PI) / 2));
    const l = -Math.sqrt(awaySq) * Math.cos(asideDeg * RAD_PER_DEG);
    const b = l * up * stretch;
    const root = Math.sqrt(Math.max(0, b * b - a * (l * l - c)));
    const bearingDeg = middleDeg + asideDeg;
    if (isBeneath) return { bearingDeg, lowDeg: Math.atan((root - b) / Math.max(a, 1e-12)) / RAD_PER_DEG, highDeg: 90 };
    const first = Math.atan((-b + root) / a) / RAD_PER_DEG;
    const second = Math.atan((-b - root) / a) / RAD_PER_DEG;
    return { bearingDeg, lowDeg: Math.min(first, second), highDeg: Math.max(first, second) };
  });
  return spans.some((span) => span.highDeg > 0) ? spans : [];
}
