import { createMemo, For, Show } from "solid-js";
import { boxFootprint } from "../../../engine/answers/shade/boxFootprint.ts";
import { leafLook } from "./leafLook.ts";
import { moduleFootprints } from "./moduleFootprints.ts";
import { arrowPx, type Facing, polygonPoints } from "./planThing.ts";
import type { PlanView } from "./planView.ts";
import type { Thing } from "./thing.ts";

/** A tree, a box or a panel group from above. */
export function PlanShape(props: { thing: Thing; view: PlanView; facing: Facing; seasonShare: number }) {
  const shape = createMemo(() => {
    const { thing, view } = props;
    const [x, y] = [view.x(thing.eastM), view.y(thing.northM)];
    if ("tree" in thing) {
      const { crownRadiusM, trunkRadiusM } = thing.tree;
      const r = crownRadiusM * view.pxPerM;
      return (
        <>
          <circle class="thing-reach" cx={x} cy={y} r={Math.max(14, r)} />
          <circle class="leaf-ground" cx={x} cy={y} r={r} />
          <circle class={`thing-shape leaf-${leafLook(thing.tree, props.seasonShare)}`} cx={x} cy={y} r={r} />
          <circle class="trunk" cx={x} cy={y} r={Math.max(3, trunkRadiusM * view.pxPerM)} />
        </>
      );
    }
    if ("box" in thing) {
      return (
        <>
          <circle class="thing-reach" cx={x} cy={y} r={14} />
          <polygon class="thing-shape wall" points={polygonPoints(view, boxFootprint(thing.box))} />
        </>
      );
    }
    const { tiltDeg, azimuthDeg } = props.facing(thing.group.id);
    const turn = `translate(${x} ${y}) rotate(${azimuthDeg})`;
    const fromPx = arrowPx(thing.group, view);
    return (
      <>
        <circle class="thing-reach" cx={x} cy={y} r={14} />
        <For each={moduleFootprints(thing.group, tiltDeg, azimuthDeg)}>
          {(corners) => <polygon class="thing-shape module" points={polygonPoints(view, corners)} />}
        </For>
        <Show when={tiltDeg > 0.5}>
          <path class="module-faces" transform={turn} d={`M0 ${-fromPx}v-13m-4 6l4 -7l4 7`} />
        </Show>
      </>
    );
  });
  return <>{shape()}</>;
}
