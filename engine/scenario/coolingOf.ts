import type { Obstacle } from "./obstacle.ts";
import type { PanelGroup } from "./panelGroup.ts";

type Cooling = NonNullable<PanelGroup["cooling"]>;

/** Tilt up to which modules count as lying, and height up to which what lies counts as lying on the ground. */
const LYING_DEG = 10;
const ON_GROUND_M = 0.3;
/** How far a module's middle may be from the top of a box that it lies on, m. */
const ON_BOX_M = 0.5;

/**
 * How air reaches the back of a group's modules: as stated, or by where they are (common practice, no source). What is propped up, turned by hand
 * or hung on a wall is free all round; what lies on the roof of a box or high up with nothing drawn beneath has a gap; what lies on the ground has
 * none.
 * @param obstacles for the boxes among them, on whose roofs modules may lie
 */
export function coolingOf(group: PanelGroup, obstacles: readonly Obstacle[]): Cooling {
  if (group.cooling !== undefined) return group.cooling;
  const { mount } = group;
  const isLying = mount.kind === "flat" || (mount.kind === "fixed" && mount.tiltDeg <= LYING_DEG);
  if (obstacles.some((obstacle) => liesOn(group, obstacle)) && mount.kind === "fixed" && mount.tiltDeg <= 30)
    return "closeRoof";
  if (!isLying) return "openRack";
  return group.at.heightM <= ON_GROUND_M ? "onRoof" : "closeRoof";
}

/** Whether the group's middle stands just over the roof of a box. */
function liesOn(group: PanelGroup, obstacle: Obstacle): boolean {
  if (obstacle.kind !== "box") return false;
  const heading = (obstacle.headingDeg * Math.PI) / 180;
  const east = group.at.eastM - obstacle.eastM;
  const north = group.at.northM - obstacle.northM;
  const along = east * Math.sin(heading) + north * Math.cos(heading);
  const across = east * Math.cos(heading) - north * Math.sin(heading);
  const isOver = Math.abs(along) <= obstacle.lengthM / 2 && Math.abs(across) <= obstacle.widthM / 2;
  return isOver && Math.abs(group.at.heightM - obstacle.heightM) <= ON_BOX_M;
}
