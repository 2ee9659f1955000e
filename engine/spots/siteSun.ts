import { wrapLongitudeDeg } from "../angle.ts";
import { makeDomeLight } from "../array/domeLight.ts";
import { clearFixedPower, makeFixedPower } from "../array/fixedPower.ts";
import { PLANE_SLOTS } from "../array/planeSlots.ts";
import { type FacedGroup, faceGroup, placeGroup } from "../array/prepareGroup.ts";
import { prepareDome } from "../array/skyDome.ts";
import { stepDome } from "../array/stepDome.ts";
import { stepPlane } from "../array/stepPlane.ts";
import { turbidityOf } from "../run/prepareSky.ts";
import { panelCableOf } from "../scenario/cable.ts";
import { eventLeafShare } from "../scenario/leafShareOf.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { type TimeGrid, timeGrid } from "../scenario/timeGrid.ts";
import { type PreparedObstacles, prepareObstacles } from "../shade/prepareObstacles.ts";
import { clearSky } from "../sky/clearSky.ts";
import { sunTrack } from "../sky/sunTrack.ts";
import type { Spot } from "./spotGrid.ts";
import { takenSpots } from "./takenSpots.ts";

/** A spot with what comes there of the light that would come with nothing standing about. */
export interface SunSpot extends Spot {
  readonly sunShare: number;
}

/** Where the light is on a site. */
export interface SiteSun {
  /** What a group would get where it stands, over what it would get with nothing about. */
  readonly shareOf: (group: PanelGroup) => number;
  /** The nearest of the sunniest spots within some metres of where a group stands; null where none is sunnier than that itself. */
  readonly near: (group: PanelGroup, withinM: number) => SunSpot | null;
}

/** Between two spots that are looked at, m. */
const STEP_M = 2;
/** A spot is as good as the best within this share of it, and the nearest of those is taken. */
const AS_GOOD = 0.01;
/** One look at the sun in so many minutes, one at the middle of each section, and a dome of so few rows: enough to tell spots apart. */
const LOOK_MINUTES = 30;
const AT_SECTION = { across: 1, along: 1 };
const SKY_ROWS = 8;
/** Cells' air, which is the same everywhere, °C. */
const AIR_C = 20;
/** Positions on a site reach so far from its middle, m. */
const SITE_M = 500;

/**
 * A quick look for whoever has no weather at hand and many places to try: rays and panels as `placeFigures` has them, under a cloudless sky on the
 * day in the middle of the event, with few points and without what controller and lead do.
 */
export function siteSun(scenario: Scenario, event: TimeGrid): SiteSun {
  const { models, obstacles } = scenario;
  const day = middleDay(event);
  const longitudeDeg = wrapLongitudeDeg(scenario.place.longitudeDeg);
  const sun = sunTrack(scenario.place.latitudeDeg, longitudeDeg, day.middleMs);
  const clear = clearSky(sun, day.middleMs, longitudeDeg, scenario.place.elevationM, turbidityOf(scenario, day));
  const dome = prepareDome(models.transposition, sun.elevationDeg, clear.extraterrestrialWm2);
  const light = makeDomeLight(models.transposition, day.steps, 1);
  stepDome(dome, clear, new Float64Array(day.steps).fill(AIR_C), light, 0);
  const still = new Float64Array(day.steps).fill(scenario.weather.windMs);
  const standing = prepareObstacles(obstacles, eventLeafShare(scenario));
  const open = prepareObstacles([]);
  const plane = new Float64Array(day.steps * PLANE_SLOTS);
  const fixed = makeFixedPower(day.steps, 1, 1);
  const faced = new Map<string, FacedGroup>();
  const known = new Map<string, number>();

  const lightOn = (group: PanelGroup, spot: Spot, about: PreparedObstacles): number => {
    const bare = uncontrolled(group);
    const key = JSON.stringify([bare.mount, bare.module, bare.count, bare.inSeries, bare.out, bare.at.heightM]);
    const at = `${about === open} ${spot.eastM} ${spot.northM} ${key}`;
    const found = known.get(at);
    if (found !== undefined) return found;
    const facing = faced.get(key) ?? faceGroup(bare, models, day, sun, dome, still);
    faced.set(key, facing);
    const moved = { ...bare, at: { ...bare.at, eastM: spot.eastM, northM: spot.northM } };
    clearFixedPower(fixed);
    stepPlane(placeGroup(moved, facing, about, AT_SECTION, SKY_ROWS), 0, light, 1, plane, fixed, false);
    const sum = fixed.sumW.reduce((all, watts) => all + watts, 0);
    known.set(at, sum);
    return sum;
  };
  const shareAt = (group: PanelGroup, spot: Spot): number => {
    // With nothing about, one place is like another.
    const most = lightOn(group, { eastM: 0, northM: 0 }, open);
    return most > 0 ? lightOn(group, spot, standing) / most : 0;
  };

  const near: SiteSun["near"] = (group, withinM) => {
    const isTaken = takenSpots(group, obstacles);
    const { at } = group;
    const reach = Math.floor(withinM / STEP_M);
    const spots: (SunSpot & { awayM: number })[] = [];
    for (let e = -reach; e <= reach; e++) {
      for (let n = -reach; n <= reach; n++) {
        const awayM = STEP_M * Math.hypot(e, n);
        const spot = { eastM: at.eastM + STEP_M * e, northM: at.northM + STEP_M * n };
        if (awayM > withinM || awayM === 0 || isTaken(spot)) continue;
        if (Math.max(Math.abs(spot.eastM), Math.abs(spot.northM)) > SITE_M) continue;
        spots.push({ ...spot, awayM, sunShare: shareAt(group, spot) });
      }
    }
    const best = spots.reduce((most, { sunShare }) => Math.max(most, sunShare), 0);
    if (best <= shareAt(group, at) * (1 + AS_GOOD) + 1e-9) return null;
    const { awayM: _, ...spot } = spots
      .filter(({ sunShare }) => sunShare >= best * (1 - AS_GOOD))
      .reduce((a, b) => (b.awayM < a.awayM || (b.awayM === a.awayM && b.sunShare > a.sunShare) ? b : a));
    return spot;
  };
  return { shareOf: (group) => shareAt(group, group.at), near };
}

/** The local day in the middle of an event, in few steps. */
function middleDay({ dates, zone }: TimeGrid): TimeGrid {
  const date = dates[Math.floor((dates.length - 1) / 2)]!;
  const next = new Date(Date.parse(`${date}T00:00Z`) + 86_400_000).toISOString().slice(0, 10);
  const laid = timeGrid({ start: `${date}T00:00`, end: `${next}T00:00`, stepMinutes: LOOK_MINUTES }, zone);
  // Where the clocks skip midnight, the day is looked at by universal time.
  const times = laid.ok
    ? laid
    : timeGrid({ start: `${date}T00:00`, end: `${next}T00:00`, stepMinutes: LOOK_MINUTES }, "Etc/UTC");
  if (!times.ok) throw new RangeError(times.problems[0]!.message);
  return times.grid;
}

/** The group as if its power did not depend on the bank, on a limit or on a lead: then it follows the light alone. */
function uncontrolled(group: PanelGroup): PanelGroup {
  const { controller } = group;
  return {
    ...group,
    // A spot is as good before the panels are there as after.
    from: undefined,
    until: undefined,
    cooling: group.cooling ?? "openRack",
    controller: {
      ...controller,
      kind: "mppt",
      at: "bank",
      stepDownOnly: false,
      maxChargeA: null,
      cable: { ...panelCableOf(controller), oneWayM: 0 },
    },
  };
}
