import type { Obstacle } from "../scenario/obstacle.ts";

/** A place on the site, metres east and north of its middle. */
export interface Spot {
  readonly eastM: number;
  readonly northM: number;
}

/** Spots in rows and columns, the first in the south-west corner: spot `row × columns + column`. */
export interface SpotGrid {
  readonly westM: number;
  readonly southM: number;
  readonly stepM: number;
  readonly columns: number;
  readonly rows: number;
}

/** Between two spots, m: the smallest with which the site has no more spots than are looked at. */
const STEPS_M = [1, 1.25, 1.5, 2] as const;
/** 60 × 40 of them. */
const MOST_SPOTS = 2400;
/** Room beyond what has to be seen, and how far about a vehicle places are looked at, m. */
const MARGIN_M = 4;
const DRIVE_M = 25;
/** What stands farther away than this makes the map no larger, m. */
const NEAR_M = 45;
/** Positions on a site reach so far from its middle, m. */
const SITE_M = 500;
/** Every so many spots one is looked at first. */
export const COARSE = 4;

export const spotAt = ({ westM, southM, stepM, columns }: SpotGrid, k: number): Spot => ({
  eastM: westM + (k % columns) * stepM,
  northM: southM + Math.floor(k / columns) * stepM,
});

/**
 * The spots of a site for a group that stands at `here`, which is one of them: so far as its lead reaches and to what stands about.
 * @param reachM from the middle of the site; null for what drives there
 */
export function spotGrid(here: Spot, reachM: number | null, obstacles: readonly Obstacle[]): SpotGrid {
  const { west, east, south, north } = windowOf(here, reachM, obstacles);
  const counts = (stepM: number) => ({
    before: Math.floor((here.eastM - west) / stepM),
    after: Math.floor((east - here.eastM) / stepM),
    under: Math.floor((here.northM - south) / stepM),
    over: Math.floor((north - here.northM) / stepM),
  });
  const spots = (stepM: number) => {
    const { before, after, under, over } = counts(stepM);
    return (before + after + 1) * (under + over + 1);
  };
  const stepM = STEPS_M.find((step) => spots(step) <= MOST_SPOTS) ?? STEPS_M.at(-1)!;
  const { before, after, under, over } = counts(stepM);
  return {
    westM: here.eastM - before * stepM,
    southM: here.northM - under * stepM,
    stepM,
    columns: before + after + 1,
    rows: under + over + 1,
  };
}

/** Every fourth spot of every fourth row, counted from a spot that is among them. */
export function coarseGrid(grid: SpotGrid, here: Spot): SpotGrid {
  const column = Math.round((here.eastM - grid.westM) / grid.stepM) % COARSE;
  const row = Math.round((here.northM - grid.southM) / grid.stepM) % COARSE;
  return {
    westM: grid.westM + column * grid.stepM,
    southM: grid.southM + row * grid.stepM,
    stepM: COARSE * grid.stepM,
    columns: Math.ceil((grid.columns - column) / COARSE),
    rows: Math.ceil((grid.rows - row) / COARSE),
  };
}

function windowOf(here: Spot, reachM: number | null, obstacles: readonly Obstacle[]) {
  const window = { west: here.eastM, east: here.eastM, south: here.northM, north: here.northM };
  const hold = ({ eastM, northM }: Spot, aboutM: number) => {
    window.west = Math.min(window.west, eastM - aboutM);
    window.east = Math.max(window.east, eastM + aboutM);
    window.south = Math.min(window.south, northM - aboutM);
    window.north = Math.max(window.north, northM + aboutM);
  };
  if (reachM === null) hold(here, DRIVE_M);
  else hold({ eastM: 0, northM: 0 }, reachM + MARGIN_M);
  for (const obstacle of obstacles) {
    if (obstacle.kind === "horizon") continue;
    if (Math.hypot(obstacle.eastM - here.eastM, obstacle.northM - here.northM) > NEAR_M) continue;
    hold(
      obstacle,
      obstacle.kind === "tree" ? obstacle.crownRadiusM : Math.hypot(obstacle.lengthM, obstacle.widthM) / 2,
    );
  }
  // As wide as the widest step has spots for, about the group.
  const mostM = (Math.floor(Math.sqrt(MOST_SPOTS)) - 1) * STEPS_M.at(-1)!;
  const held = (low: number, high: number, at: number) => {
    if (high - low <= mostM) return [low, high] as const;
    const from = Math.min(Math.max(low, at - mostM / 2), high - mostM);
    return [from, from + mostM] as const;
  };
  const [west, east] = held(window.west, window.east, here.eastM);
  const [south, north] = held(window.south, window.north, here.northM);
  return {
    west: Math.max(-SITE_M, west),
    east: Math.min(SITE_M, east),
    south: Math.max(-SITE_M, south),
    north: Math.min(SITE_M, north),
  };
}
