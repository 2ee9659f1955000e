import type { Scenario } from "../scenario/scenario.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { siteSun } from "../spots/siteSun.ts";
import { bankLevers } from "./bankLevers.ts";
import { gearLevers } from "./gearLevers.ts";
import type { Lever } from "./lever.ts";
import { morePanels, openPanels } from "./openPanels.ts";
import { placeLevers } from "./placeLevers.ts";
import { sourceLevers } from "./sourceLevers.ts";
import { stationLevers } from "./stationLevers.ts";

/**
 * Every lever that a plan has.
 * @param lent panel groups that other plans have, as written: they can be set up here too
 */
export function leversOf(scenario: Scenario, grid: TimeGrid, lent: readonly unknown[] = []): Lever[] {
  const sun = siteSun(scenario, grid);
  const levers = [
    ...openPanels(scenario, lent, sun),
    ...bankLevers(scenario),
    ...morePanels(scenario, sun),
    ...placeLevers(scenario, grid, sun),
    ...sourceLevers(scenario),
    ...stationLevers(scenario, grid),
    ...gearLevers(scenario),
  ];
  return levers.filter(({ amounts }) => amounts.length > 0);
}
