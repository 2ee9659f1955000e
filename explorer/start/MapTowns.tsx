import type { GeoProjection } from "d3";
import { createEffect, createMemo, For } from "solid-js";
import type { Town } from "../../engine/towns/index.ts";
import { ownTowns } from "../place/ownTowns.ts";
import { MAP_PX, NEAREST } from "./mapView.ts";

const MOST = 14;
/** Room that a name of the map's type takes, px. */
const LETTER_PX = 8.2;
const LINE_PX = 20;

interface Placed {
  readonly town: Town;
  readonly x: number;
  readonly y: number;
  readonly isLeft: boolean;
}

/** The largest towns of the nearest view, with as many names as fit beside one another. */
export function MapTowns(props: { view: number; projection: GeoProjection }) {
  createEffect(() => props.view === NEAREST && ownTowns.ask());
  const placed = createMemo(() => (props.view === NEAREST ? placedTowns(ownTowns.towns(), props.projection) : []));
  return (
    <For each={placed()}>
      {({ town, x, y, isLeft }) => (
        <>
          <circle class="map-town" cx={x} cy={y} r="2.5" />
          <text class="map-town-name" x={isLeft ? x - 6 : x + 6} y={y + 5} text-anchor={isLeft ? "end" : "start"}>
            {town.name}
          </text>
        </>
      )}
    </For>
  );
}

function placedTowns(towns: readonly Town[], projection: GeoProjection): Placed[] {
  const { width, height } = MAP_PX;
  const inside = towns.flatMap((town) => {
    const at = projection([town.lon, town.lat]);
    const isIn = at !== null && at[0] > 8 && at[0] < width - 8 && at[1] > 12 && at[1] < height - 8;
    return isIn ? [{ town, x: at[0], y: at[1] }] : [];
  });
  inside.sort((a, b) => b.town.people - a.town.people);
  const taken: { left: number; right: number; y: number }[] = [];
  const placed: Placed[] = [];
  for (const { town, x, y } of inside) {
    if (placed.length === MOST) break;
    const long = town.name.length * LETTER_PX + 8;
    const isLeft = x + long > width;
    const box = { left: isLeft ? x - long : x - 4, right: isLeft ? x + 4 : x + long, y };
    const isFree = taken.every((o) => Math.abs(o.y - y) > LINE_PX || o.left > box.right || o.right < box.left);
    if (!isFree) continue;
    taken.push(box);
    placed.push({ town, x, y, isLeft });
  }
  return placed;
}
