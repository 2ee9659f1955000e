import type { PlanPoint } from "../../../engine/answers/shade/boxFootprint.ts";
import { modulePoints } from "../../../engine/array/modulePoints.ts";
import { panelAxes } from "../../../engine/array/panelAxes.ts";
import type { PanelGroup } from "../../../engine/scenario/panelGroup.ts";

/** The modules of a group as they look from straight above: a tilted one is foreshortened. Four corners each, in turn. */
export function moduleFootprints(
  group: Pick<PanelGroup, "count" | "module" | "at">,
  tiltDeg: number,
  azimuthDeg: number,
): PlanPoint[][] {
  const { lengthwise, widthwise } = panelAxes(tiltDeg, azimuthDeg);
  const { lengthM, widthM } = group.module;
  const whole = { ...group, module: { ...group.module, bypassSections: 1 } };
  const middles = modulePoints(whole, tiltDeg, azimuthDeg, { across: 1, along: 1 });
  const corners: [number, number][] = [
    [1, 1],
    [1, -1],
    [-1, -1],
    [-1, 1],
  ];
  return Array.from({ length: group.count }, (_, m) =>
    corners.map(([l, w]) => ({
      eastM: middles[3 * m]! + (l * lengthM * lengthwise[0] + w * widthM * widthwise[0]) / 2,
      northM: middles[3 * m + 1]! + (l * lengthM * lengthwise[1] + w * widthM * widthwise[1]) / 2,
    })),
  );
}
