import { type PlacedLabel, placeLabels } from "../../../engine/drawing/placeLabels.ts";
import { inUnits } from "../../../engine/words/displayUnits.ts";
import { arrowPx, type Facing } from "./planThing.ts";
import { isInView, type PlanView, reachOf, viewBox } from "./planView.ts";
import type { Thing } from "./thing.ts";

/** A thing's name at its place on the plan. */
export type PlanName = PlacedLabel & { readonly key: string };

/** Names of what is in view, clear of modules, of their arrows and of the arrow that points north. */
export function planNames(things: readonly Thing[], view: PlanView, facing: Facing): PlanName[] {
  const names = things
    .filter((thing) => isInView(view, thing))
    .map((thing) => ({
      key: thing.key,
      text: "tree" in thing ? `${thing.name} ${inUnits(thing.tree.heightM, "m")}` : thing.name,
      short: thing.name,
      best: "beside" as const,
      x: view.x(thing.eastM),
      y: view.y(thing.northM),
      clearPx: "group" in thing ? reachOf(thing) * view.pxPerM * 0.8 + 6 : 9,
    }));
  // Panels first: they are what the page is about.
  names.reverse();
  const corner = { left: view.widthPx - 48, right: view.widthPx, top: 0, bottom: 56 };
  const spots = names.map(({ x, y }) => ({ left: x - 5, right: x + 5, top: y - 5, bottom: y + 5 }));
  const modules = things.flatMap((thing) => {
    if (!("group" in thing)) return [];
    const half = Math.max(5, reachOf(thing) * view.pxPerM * 0.7);
    const [x, y] = [view.x(thing.eastM), view.y(thing.northM)];
    const arrow = arrowPx(thing.group, view);
    const turn = (facing(thing.group.id).azimuthDeg * Math.PI) / 180;
    const [tipX, tipY] = [x + Math.sin(turn) * (arrow + 8), y - Math.cos(turn) * (arrow + 8)];
    return [
      { left: x - half, right: x + half, top: y - half, bottom: y + half },
      { left: tipX - 8, right: tipX + 8, top: tipY - 8, bottom: tipY + 8 },
    ];
  });
  const placed = placeLabels(names, viewBox(view), [corner, ...spots, ...modules]);
  return names.flatMap(({ key }, i) => (placed[i] ? [{ key, ...placed[i]! }] : []));
}
