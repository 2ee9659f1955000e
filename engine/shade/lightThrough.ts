import { RAD_PER_DEG } from "../angle.ts";
import { boxLight, type PreparedBox } from "./boxLight.ts";
import { dimByTree, type PreparedTree } from "./dimByTree.ts";
import { horizonElevationDeg } from "./horizonElevationDeg.ts";
import type { PreparedObstacles } from "./prepareObstacles.ts";

/** A place in metres east, north and up of the station's origin. */
export interface Point {
  readonly eastM: number;
  readonly northM: number;
  readonly upM: number;
}

/**
 * Share of the sun's beam that reaches a point, 0 (dark) … 1 (free), under crowns of the first level. What several obstacles let through multiplies.
 * The sun is a point: the half degree of penumbra at a shadow's edge is left out.
 * @param sunAzimuthDeg clockwise from true north
 * @param sunElevationDeg above the level horizon, as seen
 */
export function lightThrough(
  obstacles: PreparedObstacles,
  point: Point,
  sunAzimuthDeg: number,
  sunElevationDeg: number,
): number {
  const light = new Float64Array(obstacles.levels);
  const points = Float64Array.of(point.eastM, point.northM, point.upM);
  lightOnPoints(obstacles, pointCloud(points), sunAzimuthDeg, sunElevationDeg, light);
  return light[0]!;
}

/** Points that are looked at together: east, north and up of each in turn, and the sphere that holds them all. */
export interface PointCloud {
  readonly pointsM: Float64Array;
  readonly eastM: number;
  readonly northM: number;
  readonly upM: number;
  readonly radiusM: number;
}

/** Wraps points (east, north, up of each in turn) into the sphere about their middle. */
export function pointCloud(pointsM: Float64Array): PointCloud {
  const count = pointsM.length / 3;
  let eastM = 0;
  let northM = 0;
  let upM = 0;
  for (let p = 0; p < pointsM.length; p += 3) {
    eastM += pointsM[p]! / count;
    northM += pointsM[p + 1]! / count;
    upM += pointsM[p + 2]! / count;
  }
  let radiusM = 0;
  for (let p = 0; p < pointsM.length; p += 3) {
    radiusM = Math.max(radiusM, Math.hypot(pointsM[p]! - eastM, pointsM[p + 1]! - northM, pointsM[p + 2]! - upM));
  }
  return { pointsM, eastM, northM, upM, radiusM };
}

/**
 * `lightThrough` for a whole cloud of points at once, and under all levels of crowns: where a ray goes is the same for them. Obstacles that
 * cannot lie between the cloud and the sun are passed over, which is most of them most of the time.
 * @param light receives one share per point, level by level
 * @returns whether anything stands in the way; if not, every share is 1
 */
export function lightOnPoints(
  obstacles: PreparedObstacles,
  cloud: PointCloud,
  sunAzimuthDeg: number,
  sunElevationDeg: number,
  light: Float64Array,
): boolean {
  const count = cloud.pointsM.length / 3;
  const all = obstacles.levels * count;
  for (const horizon of obstacles.horizons) {
    if (sunElevationDeg < horizonElevationDeg(horizon, sunAzimuthDeg)) {
      light.fill(0, 0, all);
      return true;
    }
  }
  const levelShare = Math.cos(sunElevationDeg * RAD_PER_DEG);
  const dirEast = levelShare * Math.sin(sunAzimuthDeg * RAD_PER_DEG);
  const dirNorth = levelShare * Math.cos(sunAzimuthDeg * RAD_PER_DEG);
  return lightAlong(obstacles, cloud, dirEast, dirNorth, Math.sin(sunElevationDeg * RAD_PER_DEG), light);
}

/**
 * `lightOnPoints` towards a direction, and without skylines. What is not in the way of a cloud is not in the way of steeper rays on the same
 * bearing either.
 * @param dirEast,dirNorth,dirUp unit vector, level or upwards
 */
export function lightAlong(
  obstacles: PreparedObstacles,
  cloud: PointCloud,
  dirEast: number,
  dirNorth: number,
  dirUp: number,
  light: Float64Array,
): boolean {
  const { pointsM } = cloud;
  const count = pointsM.length / 3;
  const all = obstacles.levels * count;
  light.fill(1, 0, all);
  let met = false;
  for (const tree of obstacles.trees) {
    if (!mayMeet(tree, cloud, dirEast, dirNorth, dirUp)) continue;
    met = true;
    dimByTree(tree, pointsM, dirEast, dirNorth, dirUp, light);
  }
  for (const box of obstacles.boxes) {
    if (!mayMeet(box, cloud, dirEast, dirNorth, dirUp)) continue;
    met = true;
    for (let p = 0; p < count; p++) {
      const at = 3 * p;
      const share = boxLight(box, pointsM[at]!, pointsM[at + 1]!, pointsM[at + 2]!, dirEast, dirNorth, dirUp);
      for (let k = p; k < all; k += count) light[k]! *= share;
    }
  }
  return met;
}

/** Whether rays from a cloud may meet the upright cylinder that holds an obstacle; a false alarm costs only time. */
function mayMeet(
  obstacle: PreparedTree | PreparedBox,
  cloud: PointCloud,
  dirEast: number,
  dirNorth: number,
  dirUp: number,
): boolean {
  const east = obstacle.eastM - cloud.eastM;
  const north = obstacle.northM - cloud.northM;
  const levelShare = Math.sqrt(dirEast * dirEast + dirNorth * dirNorth);
  const widthM = obstacle.reachM + cloud.radiusM;
  const aside = Math.abs(east * dirNorth - north * dirEast);
  if (aside > widthM * levelShare) return false;
  const along = east * dirEast + north * dirNorth;
  if (along < -widthM * levelShare) return false;
  // Height of the lowest ray where it enters the cylinder, times the level share.
  const enter = along - widthM * levelShare;
  if (enter <= 0 || levelShare === 0) return true;
  return (cloud.upM - cloud.radiusM - obstacle.topM) * levelShare * levelShare + enter * dirUp <= 0;
}
