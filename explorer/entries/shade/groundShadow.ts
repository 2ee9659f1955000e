import { RAD_PER_DEG } from "../../../engine/angle.ts";
import { boxFootprint, type PlanPoint } from "../../../engine/answers/shade/boxFootprint.ts";
import type { Box, Tree } from "../../../engine/scenario/obstacle.ts";

/** An ellipse on the ground; `alongM` and `acrossM` are half its axes along and across `bearingDeg`. */
export interface GroundEllipse extends PlanPoint {
  readonly alongM: number;
  readonly acrossM: number;
  readonly bearingDeg: number;
}

/** How far the shadow of one metre of height reaches. @param elevationDeg of the sun, above 0 */
export function shadowPerM(elevationDeg: number): number {
  return 1 / Math.tan(elevationDeg * RAD_PER_DEG);
}

/** Where the shadow of something `heightM` above a point falls on level ground. */
export function shadowOf(from: PlanPoint, heightM: number, azimuthDeg: number, elevationDeg: number): PlanPoint {
  const reachM = heightM * shadowPerM(elevationDeg);
  return {
    eastM: from.eastM - reachM * Math.sin(azimuthDeg * RAD_PER_DEG),
    northM: from.northM - reachM * Math.cos(azimuthDeg * RAD_PER_DEG),
  };
}

/**
 * The shadow of a crown, an ellipsoid of revolution, on level ground: across the sun its radius, along it the two half
 * axes as legs, √(radius² + (half height ÷ tan elevation)²).
 * @param elevationDeg of the sun, above 0
 */
export function crownShadow(tree: Tree, azimuthDeg: number, elevationDeg: number): GroundEllipse {
  const halfHeightM = (tree.heightM - tree.crownBaseM) / 2;
  const middle = shadowOf(tree, tree.crownBaseM + halfHeightM, azimuthDeg, elevationDeg);
  const alongM = Math.hypot(tree.crownRadiusM, halfHeightM * shadowPerM(elevationDeg));
  return { ...middle, alongM, acrossM: tree.crownRadiusM, bearingDeg: azimuthDeg };
}

/** The shadow of a box: the hull of its underside's and its top's shadows. @param elevationDeg of the sun, above 0 */
export function boxShadow(box: Box, azimuthDeg: number, elevationDeg: number): PlanPoint[] {
  const corners = boxFootprint(box);
  return hull([
    ...corners.map((corner) => shadowOf(corner, box.baseM, azimuthDeg, elevationDeg)),
    ...corners.map((corner) => shadowOf(corner, box.heightM, azimuthDeg, elevationDeg)),
  ]);
}

/** The convex outline of some points. @see A. M. Andrew, Information Processing Letters 9 (1979) 216–219 */
function hull(points: readonly PlanPoint[]): PlanPoint[] {
  const sorted = [...points].sort((a, b) => a.eastM - b.eastM || a.northM - b.northM);
  const half = (ordered: readonly PlanPoint[]) => {
    const chain: PlanPoint[] = [];
    for (const point of ordered) {
      while (chain.length > 1 && turn(chain.at(-2)!, chain.at(-1)!, point) <= 1e-9) chain.pop();
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

function turn(a: PlanPoint, b: PlanPoint, c: PlanPoint): number {
  return (b.eastM - a.eastM) * (c.northM - a.northM) - (b.northM - a.northM) * (c.eastM - a.eastM);
}
