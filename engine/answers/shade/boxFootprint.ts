import { RAD_PER_DEG } from "../../angle.ts";
import type { Box } from "../../scenario/obstacle.ts";

/** A place on the plan, metres east and north of the site's origin. */
export interface PlanPoint {
  readonly eastM: number;
  readonly northM: number;
}

/** The four corners of a box, in turn. */
export function boxFootprint(box: Box): PlanPoint[] {
  const sin = Math.sin(box.headingDeg * RAD_PER_DEG);
  const cos = Math.cos(box.headingDeg * RAD_PER_DEG);
  const corners: [number, number][] = [
    [1, 1],
    [1, -1],
    [-1, -1],
    [-1, 1],
  ];
  return corners.map(([l, w]) => {
    const along = (l * box.lengthM) / 2;
    const across = (w * box.widthM) / 2;
    return { eastM: box.eastM + along * sin + across * cos, northM: box.northM + along * cos - across * sin };
  });
}
