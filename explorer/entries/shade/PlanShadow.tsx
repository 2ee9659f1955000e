import { createMemo } from "solid-js";
import { boxShadow, crownShadow, shadowOf } from "./groundShadow.ts";
import { polygonPoints, type SunPlace } from "./planThing.ts";
import type { PlanView } from "./planView.ts";
import type { Thing } from "./thing.ts";

/** The shadow that a thing throws on the ground: of a box as it is, of a tree its trunk's and its crown's. */
export function PlanShadow(props: { thing: Thing; view: PlanView; sun: SunPlace }) {
  const shape = createMemo(() => {
    const { thing, view, sun } = props;
    const { azimuthDeg, elevationDeg } = sun;
    if ("box" in thing) {
      const points = polygonPoints(view, boxShadow(thing.box, azimuthDeg, elevationDeg));
      return <polygon class="ground-shadow" points={points} />;
    }
    if (!("tree" in thing)) return null;
    const crown = crownShadow(thing.tree, azimuthDeg, elevationDeg);
    const neck = shadowOf(thing, thing.tree.crownBaseM, azimuthDeg, elevationDeg);
    const [x, y] = [view.x(crown.eastM), view.y(crown.northM)];
    return (
      <>
        <line
          class="trunk-shadow"
          x1={view.x(thing.eastM)}
          y1={view.y(thing.northM)}
          x2={view.x(neck.eastM)}
          y2={view.y(neck.northM)}
          stroke-width={Math.max(1.4, thing.tree.trunkRadiusM * 2 * view.pxPerM)}
        />
        <ellipse
          class="ground-shadow"
          cx={x}
          cy={y}
          rx={crown.acrossM * view.pxPerM}
          ry={crown.alongM * view.pxPerM}
          transform={`rotate(${crown.bearingDeg} ${x} ${y})`}
        />
      </>
    );
  });
  return <>{shape()}</>;
}
