import type { Box } from "../../../engine/drawing/nameRoom.ts";
import { type PlacedLabel, placeLabels, type WantedLabel } from "../../../engine/drawing/placeLabels.ts";
import type { SkyShape } from "./skyShapes.ts";
import type { SkyView } from "./skyView.ts";
import type { SkyHour } from "./sunWay.ts";

/** A name in the sky: of an hour, or of what stands in it. */
export type SkyName = PlacedLabel & { readonly isHour: boolean };

/** Every third hour along the sun's way, and what stands in the sky, the nearest first. */
export function skyNames(hours: readonly SkyHour[], shapes: readonly SkyShape[], view: SkyView): SkyName[] {
  const frame: Box = { left: 2, right: view.widthPx - 2, top: 2, bottom: view.heightPx - 2 };
  const rings = hours.map(({ x, y }) => ({ left: x - 5, right: x + 5, top: y - 5, bottom: y + 5 }));
  const marked = hours.filter(({ hour }) => hour % 3 === 0);
  const wanted: WantedLabel[] = [
    ...marked.map(({ hour, x, y }) => ({ text: `${hour} h`, x, y: y + 4, clearPx: 9, best: "beside" as const })),
    ...[...shapes].reverse().flatMap(({ name, top }) => {
      if (name === "" || top === null) return [];
      return [{ text: name, x: top.x, y: Math.max(0, top.y), clearPx: 6, best: "under" as const }];
    }),
  ];
  const placed = placeLabels(wanted, frame, rings);
  return placed.flatMap((label, i) => (label === null ? [] : [{ ...label, isHour: i < marked.length }]));
}
