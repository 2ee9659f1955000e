import type { PlanPoint } from "../../../engine/answers/shade/boxFootprint.ts";
import type { PanelGroup } from "../../../engine/scenario/panelGroup.ts";
import { inUnits } from "../../../engine/words/displayUnits.ts";
import type { PlanView } from "./planView.ts";
import type { Thing } from "./thing.ts";

/** Where the sun stands, degrees. */
export interface SunPlace {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

/** Where a panel group faces, degrees. */
export type Facing = (groupId: string) => { readonly tiltDeg: number; readonly azimuthDeg: number };

/** Points of the ground as a polygon's. */
export const polygonPoints = (view: PlanView, points: readonly PlanPoint[]) =>
  points.map((point) => `${view.x(point.eastM).toFixed(1)},${view.y(point.northM).toFixed(1)}`).join(" ");

/** How far from a group's middle the arrow begins that says where it faces. */
export const arrowPx = (group: PanelGroup, view: PlanView) => group.module.lengthM * view.pxPerM * 0.5 + 3;

/** "tree 13 m high", "2 panels" */
export function kindWords(thing: Thing): string {
  if ("tree" in thing) return `tree ${inUnits(thing.tree.heightM, "m")} high`;
  if ("box" in thing) return `box ${inUnits(thing.box.heightM, "m")} high`;
  return thing.group.count === 1 ? "one panel" : `${thing.group.count} panels`;
}
