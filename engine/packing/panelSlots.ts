import { leadM, OPEN_WITHIN_M, openSpot, proppedUp } from "../reach/openPanels.ts";
import type { Scenario, ScenarioInput } from "../scenario/scenario.ts";
import { timeGrid } from "../scenario/timeGrid.ts";
import { zoneOf } from "../scenario/zoneOf.ts";
import { siteSun } from "../spots/siteSun.ts";
import { knownParts } from "./knownParts.ts";
import type { LeftOut } from "./leftOut.ts";
import type { OwnedThing } from "./ownedThing.ts";
import { newGroup, type PanelOption, panelOptions, patternOf } from "./packedPanels.ts";

/** Panels of one kind with every way to set them up; `inPlan` is the group of the plan that they stand for. */
export interface PanelChoice {
  readonly thing: number;
  readonly options: readonly PanelOption[];
  readonly inPlan: string | null;
}

/** Every kind of panels of a list. @param leftOut told what cannot be set up here */
export function panelSlots(
  document: ScenarioInput,
  scenario: Scenario,
  others: readonly ScenarioInput[],
  things: readonly OwnedThing[],
  leftOut: LeftOut[],
): PanelChoice[] {
  const leads = things.filter(({ kind, count }) => kind === "lead" && count > 0);
  const controllers = things.filter(({ kind, count }) => kind === "controller" && count > 0);
  const groups = knownParts(document, others, "panels");
  const taken = new Set<string>(things.flatMap(({ kind, as }) => (kind === "panel" && as !== undefined ? [as] : [])));
  const used = new Set<string>();
  const ids = new Set([...scenario.panels, ...scenario.sources].map(({ id }) => id));
  let spot: { readonly eastM: number; readonly northM: number } | null = null;
  const found: PanelChoice[] = [];
  things.forEach((thing, t) => {
    if (thing.kind !== "panel" || thing.count === 0) return;
    let pattern = patternOf(thing, groups, (id) => !used.has(id) && (thing.as === id || !taken.has(id)));
    if (pattern === null && thing.as !== undefined) {
      leftOut.push({ thing: t, why: `no plan here has panels called ${thing.as} that nothing else stands for` });
      return;
    }
    if (pattern === null) {
      spot ??= sunniest(scenario, leads);
      let id = thing.id;
      for (let n = 2; ids.has(id); n++) id = `${thing.id}-${n}`.slice(-40);
      pattern = newGroup(thing, id, scenario, proppedUp(scenario.place.latitudeDeg), spot, leadM(spot));
    }
    used.add(pattern.id);
    ids.add(pattern.id);
    const options = panelOptions(thing, pattern, leads, controllers);
    if (options.length === 1) {
      leftOut.push({ thing: t, why: "no lead on the list is long enough, or no controller stands their volts" });
      return;
    }
    const inPlan = scenario.panels.some(({ id }) => id === pattern.id) ? pattern.id : null;
    found.push({ thing: t, options, inPlan });
  });
  const isUsed = (thing: OwnedThing) =>
    found.some(({ options }) => options.some(({ lead, controller }) => lead === thing || controller === thing));
  things.forEach((thing, t) => {
    if ((thing.kind === "lead" || thing.kind === "controller") && thing.count > 0 && !isUsed(thing))
      leftOut.push({ thing: t, why: found.length === 0 ? "no panels on the list need it" : "no panels here fit it" });
  });
  return found;
}

/** The sunniest place that the longest lead reaches. */
function sunniest(scenario: Scenario, leads: readonly OwnedThing[]) {
  const times = timeGrid(scenario.time, zoneOf(scenario.place));
  const middle = { eastM: 0, northM: 0 };
  if (!times.ok) return middle;
  const slackM = leadM(middle);
  const withinM =
    leads.length === 0 ? OPEN_WITHIN_M : Math.max(0, Math.max(...leads.map(({ lengthM }) => lengthM!)) - slackM);
  return openSpot(scenario.place.latitudeDeg, siteSun(scenario, times.grid), Math.min(OPEN_WITHIN_M, withinM));
}
