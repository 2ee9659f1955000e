import { type TimeGrid, timeGrid } from "../../../engine/scenario/timeGrid.ts";
import { clearSky } from "../../../engine/sky/clearSky.ts";
import { dayLight } from "../../../engine/sky/dayClearIndex.ts";
import type { SkyClimate, SkyEvent } from "../../../engine/sky/skyEnsemble.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";

export interface EventPlan {
  start: string;
  end: string;
  stepMinutes?: number;
  zone?: string;
  latitudeDeg?: number;
  longitudeDeg?: number;
}

export function gridOf({ start, end, stepMinutes = 10, zone = "America/Denver" }: EventPlan): TimeGrid {
  const found = timeGrid({ start, end, stepMinutes }, zone);
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.grid;
}

/** An event under a cloudless sky of turbidity 3 at 1,600 m, near 40° N 105° W if nothing else is said. */
export function skyEvent(plan: EventPlan): SkyEvent {
  const grid = gridOf(plan);
  const { latitudeDeg = 40, longitudeDeg = -105 } = plan;
  const site = { latitudeDeg, longitudeDeg, elevationM: 1600, linkeTurbidity: 3 };
  const sun = sunTrack(latitudeDeg, longitudeDeg, grid.middleMs);
  const clear = clearSky(sun, grid.middleMs, longitudeDeg, site.elevationM, site.linkeTurbidity);
  return { site, grid, clear, days: dayLight(site, grid.middleMs, grid.localDay) };
}

const twelve = (value: number) => Array.from({ length: 12 }, () => value);

/** The same climate in all months. */
export const CLIMATE: SkyClimate = {
  kt: twelve(0.55),
  sd: twelve(0.15),
  r1: twelve(0.35),
  tmaxC: twelve(20),
  tminC: twelve(6),
};
