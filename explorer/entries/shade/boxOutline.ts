import { RAD_PER_DEG } from "../../../engine/angle.ts";
import { boxFootprint } from "../../../engine/answers/shade/boxFootprint.ts";
import type { Box } from "../../../engine/scenario/obstacle.ts";
import type { Point } from "../../../engine/shade/index.ts";
import type { SkySpan } from "./crownOutline.ts";

const SAMPLES = 49;

/**
 * A box as an eye at `point` sees it, bearing by bearing: where the bearing crosses the footprint, the nearer or the
 * farther wall sets the edge.
 * @returns an empty list when nothing of it stands above the eye's level, or the eye is inside it
 */
export function boxOutline(box: Box, point: Point): SkySpan[] {
  const topM = box.heightM - point.upM;
  const baseM = box.baseM - point.upM;
  if (topM <= 0) return [];
  const inside = crossing(box, point, 0).enterM === 0;
  if (inside && baseM <= 0) return [];
  const middleDeg = Math.atan2(box.eastM - point.eastM, box.northM - point.northM) / RAD_PER_DEG;
  const corners = boxFootprint(box).map((corner) => {
    const bearing = Math.atan2(corner.eastM - point.eastM, corner.northM - point.northM) / RAD_PER_DEG;
    return middleDeg + (((bearing - middleDeg + 540) % 360) - 180);
  });
  const fromDeg = inside ? middleDeg - 180 : Math.min(...corners);
  const toDeg = inside ? middleDeg + 180 : Math.max(...corners);
  const even = Array.from({ length: SAMPLES }, (_, i) => fromDeg + ((toDeg - fromDeg) * i) / (SAMPLES - 1));
  const bearings = [...even, ...(inside ? [] : corners)].sort((one, other) => one - other);
  return bearings.flatMap((bearingDeg) => {
    // A hair inside the corner, where rounding might miss the box.
    const inward = Math.sign((fromDeg + toDeg) / 2 - bearingDeg) * 1e-6;
    const { enterM, leaveM } = crossing(box, point, bearingDeg + inward);
    if (!(leaveM > enterM)) return [];
    const deg = (heightM: number, awayM: number) => Math.atan2(heightM, awayM) / RAD_PER_DEG;
    return [{ bearingDeg, lowDeg: deg(baseM, baseM < 0 ? enterM : leaveM), highDeg: deg(topM, enterM) }];
  });
}

/** Where a level ray enters and leaves the footprint; 0 when it starts inside, Infinity and −Infinity when it misses. */
function crossing(box: Box, point: Point, bearingDeg: number): { enterM: number; leaveM: number } {
  const turnRad = (bearingDeg - box.headingDeg) * RAD_PER_DEG;
  const headingRad = box.headingDeg * RAD_PER_DEG;
  const east = point.eastM - box.eastM;
  const north = point.northM - box.northM;
  const sides: [number, number, number][] = [
    [east * Math.sin(headingRad) + north * Math.cos(headingRad), Math.cos(turnRad), box.lengthM / 2],
    [east * Math.cos(headingRad) - north * Math.sin(headingRad), Math.sin(turnRad), box.widthM / 2],
  ];
  let enterM = 0;
  let leaveM = Number.POSITIVE_INFINITY;
  for (const [from, direction, halfM] of sides) {
    if (Math.abs(direction) < 1e-12) {
      if (Math.abs(from) > halfM) return { enterM: Number.POSITIVE_INFINITY, leaveM: Number.NEGATIVE_INFINITY };
      continue;
    }
    const first = (-halfM - from) / direction;
    const second = (halfM - from) / direction;
    enterM = Math.max(enterM, Math.min(first, second));
    leaveM = Math.min(leaveM, Math.max(first, second));
  }
  return leaveM > enterM ? { enterM, leaveM } : { enterM: Number.POSITIVE_INFINITY, leaveM: Number.NEGATIVE_INFINITY };
}
