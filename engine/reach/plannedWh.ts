import { wrapLongitudeDeg } from "../angle.ts";
import { prepareLoads } from "../load/prepareLoads.ts";
import { darkShare } from "../run/prepare.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { nightSpans } from "../sky/nightSpans.ts";

/** What all that is planned wants over an event, Wh, with stations sending their mean share; without a pad in the battery box. */
export function plannedWh({ place, gear, stations, converter }: Scenario, grid: TimeGrid): number {
  const { latitudeDeg, longitudeDeg } = place;
  const endMs = grid.startMs + grid.steps * grid.stepMs;
  const nights = nightSpans(latitudeDeg, wrapLongitudeDeg(longitudeDeg), grid.startMs, endMs);
  const { wantedW } = prepareLoads(gear, stations, grid, darkShare(grid, nights), null);
  return (wantedW.reduce((sum, watts) => sum + watts, 0) * grid.stepH) / (converter?.efficiencyShare ?? 1);
}
