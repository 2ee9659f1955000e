import type { PanelGroup } from "../scenario/panelGroup.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { type TimeGrid, timeGrid } from "../scenario/timeGrid.ts";
import { zoneOf } from "../scenario/zoneOf.ts";
import { type LeadRule, leadRule } from "./leadRule.ts";
import { type Spot, type SpotGrid, spotGrid } from "./spotGrid.ts";
import { takenSpots } from "./takenSpots.ts";

/** What is looked at for one panel group of a scenario. */
export interface SpotsPlan {
  readonly scenario: Scenario;
  readonly time: TimeGrid;
  readonly group: PanelGroup;
  readonly lead: LeadRule;
  readonly grid: SpotGrid;
  /** Whether something stands at a spot, so that the group cannot. */
  readonly isTaken: (spot: Spot) => boolean;
}

/** @param id of a panel group; the problem names those that there are where none has it */
export function spotsPlan(
  scenario: Scenario,
  id: string,
): { ok: true; plan: SpotsPlan } | { ok: false; problems: readonly Problem[] } {
  const groups = scenario.panels.filter(({ count }) => count > 0);
  const group = groups.find((each) => each.id === id);
  if (group === undefined) return { ok: false, problems: [noGroup(id, groups)] };
  const times = timeGrid(scenario.time, zoneOf(scenario.place));
  if (!times.ok) return times;
  const lead = leadRule(group);
  const isTaken = takenSpots(group, scenario.obstacles);
  const grid = spotGrid(group.at, lead.reachM, scenario.obstacles);
  return { ok: true, plan: { scenario, time: times.grid, group, lead, grid, isTaken } };
}

function noGroup(id: string, groups: readonly PanelGroup[]): Problem {
  const known = groups.map((group) => group.id).join(", ");
  const message =
    known === ""
      ? "The scenario has no panels that could be put anywhere; add a panel group with at least one panel."
      : `There is no panel group "${id}" with panels in this scenario; its groups are ${known}.`;
  return { code: "no-such-group", path: ["panels"], message };
}
