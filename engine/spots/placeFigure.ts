import { type DomeLight, makeDomeLight } from "../array/domeLight.ts";
import { clearFixedPower, MEMBER_CROWNS, MEMBER_YIELD } from "../array/fixedPower.ts";
import { type PreparedGroup, preparedGroup } from "../array/preparedGroup.ts";
import { type FacedGroup, faceGroup, placeGroup } from "../array/prepareGroup.ts";
import { stepDome } from "../array/stepDome.ts";
import { stepPlane } from "../array/stepPlane.ts";
import { crownLean, FIGURE_YIELD_SHARE } from "../run/memberFigures.ts";
import { type Prepared, preparedOf } from "../run/prepare.ts";
import { makeRunDetails } from "../run/runDetails.ts";
import { makeRunRows } from "../run/runRows.ts";
import { stepRun } from "../run/stepRun.ts";
import { panelCableOf } from "../scenario/cable.ts";
import { coolingOf } from "../scenario/coolingOf.ts";
import { eventLeafShare } from "../scenario/leafShareOf.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import { prepareObstacles } from "../shade/prepareObstacles.ts";
import { wholeDayWeights } from "./wholeDayWeights.ts";

/** A group somewhere else: where, on how long a lead, and how it stands there; as it stands now where `mount` is left out. */
export interface Place {
  readonly eastM: number;
  readonly northM: number;
  readonly leadM: number;
  readonly mount?: PanelGroup["mount"];
}

/** What a group offers the bank at a place, under the sky as written. */
export interface PlaceFigure {
  /** On a mean whole day of the event; over all of it where the event has no whole day. Wh. */
  readonly dayWh: number;
  /** Over the event, Wh. */
  readonly eventWh: number;
  /** What the lead takes: how much more it would be over the event with no lead at all, as a share of that. */
  readonly leadLossShare: number;
}

/** Rows of the dome that are looked at for each of many places: a third of a run's, which moves figures by 0.4 % at most (tests/engine/spots). */
export const COARSE_SKY_ROWS = 24;

/** The scenario's panel group with its like at another place. */
export function groupAt(group: PanelGroup, { eastM, northM, leadM, mount }: Place): PanelGroup {
  const { controller } = group;
  return {
    ...group,
    at: { ...group.at, eastM, northM },
    mount: mount ?? group.mount,
    controller: { ...controller, cable: { ...panelCableOf(controller), oneWayM: leadM } },
  };
}

/**
 * Says what a panel group brings at one place after another: the engine's own rays, sections, cable and controller, as in a run of the scenario with
 * the group there. Where the bank's volts have a say in its power (PWM, strings too low, a controller at its limit), the whole scenario is run.
 * @param g number of the group in `prepared.scenario.panels`
 * @returns the figure of a place; with `SKY_ROWS` to the last digit that of a run, else within 0.4 %
 */
export function placeFigures(prepared: Prepared, g: number): (place: Place, skyRows?: number) => PlaceFigure {
  const { scenario, grid, sun, windMs, groups } = prepared;
  const { models, obstacles } = scenario;
  const group = scenario.panels[g]!;
  const { dome } = groups[g]!;
  const standing = prepareObstacles(obstacles, eventLeafShare(scenario));
  const rows = makeRunRows(prepared);
  const { fixed } = rows;
  const { figures } = prepared.inputs;
  fixed.ofMember[MEMBER_YIELD] = figures[FIGURE_YIELD_SHARE]!;
  fixed.ofMember[MEMBER_CROWNS] = crownLean(figures);
  const light: DomeLight = makeDomeLight(dome.transposition, grid.steps, 1);
  stepDome(dome, prepared.light, prepared.airTempC, light, 0);
  const weights = wholeDayWeights(grid);
  let details: ReturnType<typeof makeRunDetails> | null = null;

  /** Writes the power of each step into `powerW`. */
  const powerW = new Float64Array(grid.steps);
  const work = (there: PreparedGroup): void => {
    clearFixedPower(fixed);
    stepPlane(there, g, light, 1, rows.planes[g]!, fixed, false);
    powerW.set(fixed.sumW);
    if (fixed.coupled.every((bits) => bits === 0)) return;
    const moved = preparedOf({ ...prepared, groups: groups.map((each, k) => (k === g ? there : each)) });
    details ??= makeRunDetails(moved.groups, rows.planes, grid.steps);
    stepRun(moved, prepared.light, prepared.airTempC, prepared.inputs, rows, details);
    for (let i = 0; i < grid.steps; i++) powerW[i] = rows.parts[i * rows.partStride + g]!;
  };
  const sumWh = (weightOf: (i: number) => number) => {
    let sum = 0;
    for (let i = 0; i < grid.steps; i++) sum += powerW[i]! * weightOf(i);
    return sum * grid.stepH;
  };

  const faced = new Map<string, FacedGroup>();
  const facedAs = (cooled: PanelGroup) => {
    const key = JSON.stringify([cooled.mount, cooled.cooling]);
    const known = faced.get(key) ?? faceGroup(cooled, models, grid, sun, dome, windMs);
    faced.set(key, known);
    return known;
  };

  return (place, skyRows = COARSE_SKY_ROWS) => {
    const moved = groupAt(group, place);
    const cooled = { ...moved, cooling: coolingOf(moved, obstacles) };
    const there = placeGroup(cooled, facedAs(cooled), standing, undefined, skyRows);
    work(preparedGroup(groupAt(cooled, { ...place, leadM: 0 }), models, there));
    const bareWh = sumWh(() => 1);
    work(there);
    const eventWh = sumWh(() => 1);
    const leadLossShare = bareWh > 0 ? Math.max(0, 1 - eventWh / bareWh) : 0;
    return { dayWh: sumWh((i) => weights[i]!), eventWh, leadLossShare };
  };
}
