import type { Obstacle } from "../scenario/obstacle.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import { isPortable } from "./leadRule.ts";
import type { Spot } from "./spotGrid.ts";

/** Room beside a trunk or a wall that panels need, and a vehicle with panels on its roof, m (common practice, no source). */
const PANEL_ROOM_M = 1.5;
const VEHICLE_ROOM_M = 3;

/** Says whether something stands at a spot, so that a group cannot. What it stands on or in now does not count. */
export function takenSpots(group: PanelGroup, obstacles: readonly Obstacle[]): (spot: Spot) => boolean {
  const { heightM } = group.at;
  const roomM = isPortable(group) ? PANEL_ROOM_M : VEHICLE_ROOM_M;
  const inTheWay = obstacles.filter((obstacle) => !stands(obstacle, group.at, 0, heightM));
  return (spot) => inTheWay.some((obstacle) => stands(obstacle, spot, roomM, heightM));
}

/** Whether a trunk, or a box that does not hang above the group, stands within some room of a spot. */
function stands(obstacle: Obstacle, { eastM, northM }: Spot, roomM: number, heightM: number): boolean {
  if (obstacle.kind === "horizon") return false;
  const east = eastM - obstacle.eastM;
  const north = northM - obstacle.northM;
  if (obstacle.kind === "tree") return Math.hypot(east, north) < obstacle.trunkRadiusM + roomM;
  if (obstacle.baseM > heightM) return false;
  const heading = (obstacle.headingDeg * Math.PI) / 180;
  const along = Math.abs(east * Math.sin(heading) + north * Math.cos(heading)) - obstacle.lengthM / 2;
  const across = Math.abs(east * Math.cos(heading) - north * Math.sin(heading)) - obstacle.widthM / 2;
  return Math.hypot(Math.max(0, along), Math.max(0, across)) <= roomM;
}
