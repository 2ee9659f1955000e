import { RAD_PER_DEG } from "../angle.ts";
import { horizonElevationDeg } from "./horizonElevationDeg.ts";
import { lightAlong, pointCloud } from "./lightThrough.ts";
import type { PreparedObstacles } from "./prepareObstacles.ts";

/** The upper half of the sky in cells: so many rows from the horizon up, twice as many columns from north clockwise. */
export const SKY_ROWS = 72;

/** Light that comes through in each cell of the sky (row by row from the horizon), mean over the points, 0…1; its length says how many rows. */
export type SkyMap = Float64Array;

/**
 * Looks once at the whole upper sky from some points, so that the share for many planes can follow cheaply.
 * @param pointsM east, north and up of each point in turn
 * @param rows from the horizon to the zenith; fewer are faster and coarser
 * @returns one map for each level of crowns
 */
export function skyMaps(obstacles: PreparedObstacles, pointsM: Float64Array, rows = SKY_ROWS): SkyMap[] {
  const { levels } = obstacles;
  const columns = 2 * rows;
  const [rowDeg, columnDeg] = [90 / rows, 360 / columns];
  const maps = Array.from({ length: levels }, () => new Float64Array(rows * columns).fill(1));
  const cloud = pointCloud(pointsM);
  const count = pointsM.length / 3;
  const light = new Float64Array(levels * count);
  const elevationRad = Float64Array.from({ length: rows }, (_, row) => (row + 0.5) * rowDeg * RAD_PER_DEG);
  const levelShare = elevationRad.map(Math.cos);
  const dirUp = elevationRad.map(Math.sin);
  for (let column = 0; column < columns; column++) {
    const azimuthDeg = (column + 0.5) * columnDeg;
    const eastward = Math.sin(azimuthDeg * RAD_PER_DEG);
    const northward = Math.cos(azimuthDeg * RAD_PER_DEG);
    for (let row = 0; row < rows; row++) {
      const cell = row * columns + column;
      const level = levelShare[row]!;
      if (!lightAlong(obstacles, cloud, level * eastward, level * northward, dirUp[row]!, light)) break;
      for (let level = 0; level < levels; level++) {
        let sum = 0;
        for (let p = level * count; p < (level + 1) * count; p++) sum += light[p]!;
        maps[level]![cell] = sum / count;
      }
    }
    for (const horizon of obstacles.horizons) {
      const lineDeg = horizonElevationDeg(horizon, azimuthDeg);
      for (let row = 0; row < rows; row++) {
        // A cell cut by the skyline keeps the part above it.
        const above = Math.min(1, Math.max(0, row + 1 - lineDeg / rowDeg));
        for (let level = 0; level < levels; level++) maps[level]![row * columns + column]! *= above;
      }
    }
  }
  return maps;
}

/**
 * Share of the diffuse light from the sky before a plane that comes through to it, 0…1: each part of the upper sky
 * counts with its cosine on the plane. 1 when nothing stands about.
 * @param tiltDeg from level, 0…180
 * @param azimuthDeg where the plane faces
 */
export function skyShareOnPlane(map: SkyMap, tiltDeg: number, azimuthDeg: number): number {
  const rows = Math.sqrt(map.length / 2);
  const columns = 2 * rows;
  const [rowDeg, columnDeg] = [90 / rows, 360 / columns];
  const sinTilt = Math.sin(tiltDeg * RAD_PER_DEG);
  const cosTilt = Math.cos(tiltDeg * RAD_PER_DEG);
  const turn = new Float64Array(columns);
  for (let column = 0; column < columns; column++) {
    turn[column] = sinTilt * Math.cos(((column + 0.5) * columnDeg - azimuthDeg) * RAD_PER_DEG);
  }
  let seen = 0;
  let whole = 0;
  for (let row = 0; row < rows; row++) {
    const elevationRad = (row + 0.5) * rowDeg * RAD_PER_DEG;
    const area = Math.cos(elevationRad);
    const up = cosTilt * Math.sin(elevationRad);
    for (let column = 0; column < columns; column++) {
      const weight = area * Math.max(0, up + area * turn[column]!);
      whole += weight;
      seen += weight * map[row * columns + column]!;
    }
  }
  return whole > 0 ? seen / whole : 1;
}

/** `skyShareOnPlane` for a single plane under crowns of the first level: the share of its sky's light that reaches it, mean over the points. */
export function skyViewShare(
  obstacles: PreparedObstacles,
  pointsM: Float64Array,
  tiltDeg: number,
  azimuthDeg: number,
): number {
  return skyShareOnPlane(skyMaps(obstacles, pointsM)[0]!, tiltDeg, azimuthDeg);
}
