import type { Scenario } from "../scenario/scenario.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { bankLevers } from "./bankLevers.ts";
import { gearLevers } from "./gearLevers.ts";
import type { Lever } from "./lever.ts";
import { morePanels, openPanels } from "./openPanels.ts";
import { placeLevers } from "./placeLevers.ts";
import { sourceLevers } from "./sourceLevers.ts";
import { stationLevers } from "./stationLevers.ts";
import { sunnySpots } from "./sunnySpots.ts";

/** How far from the middle of the site panels in the open are looked for, m. */
const OPEN_WITHIN_M = 30;
const OPEN_HEIGHT_M = 0.5;

/**
 * Every lever that a plan has.
 * @param lent panel groups that other plans have, as written: they can be set up here too
 */
export function leversOf(scenario: Scenario, grid: TimeGrid, lent: readonly unknown[] = []): Lever[] {
  const spots = sunnySpots(scenario, grid);
  const here = { eastM: 0, northM: 0, sunShare: spots.shareAt(0, 0, OPEN_HEIGHT_M) };
  const open = spots.near(0, 0, OPEN_HEIGHT_M, OPEN_WITHIN_M) ?? here;
  const levers = [
    ...openPanels(scenario, lent, spots, open),
    ...bankLevers(scenario),
    ...morePanels(scenario, spots),
    ...placeLevers(scenario, grid, spots),
    ...sourceLevers(scenario),
    ...stationLevers(scenario, grid),
    ...gearLevers(scenario),
  ];
  return levers.filter(({ amounts }) => amounts.length > 0);
}
