import { wrapLongitudeDeg } from "../angle.ts";
import { copperOhmPerM } from "../array/copperOhmPerM.ts";
import type { PreparedGroup } from "../array/preparedGroup.ts";
import { prepareGroup } from "../array/prepareGroup.ts";
import { prepareDome } from "../array/skyDome.ts";
import { type PreparedBank, prepareBank } from "../bank/prepareBank.ts";
import { toGrid } from "../grid.ts";
import { type PreparedLoads, prepareLoads } from "../load/prepareLoads.ts";
import { radioLeadOf } from "../scenario/cable.ts";
import { coolingOf } from "../scenario/coolingOf.ts";
import { eventLeafShare } from "../scenario/leafShareOf.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { type TimeGrid, timeGrid } from "../scenario/timeGrid.ts";
import { zoneOf } from "../scenario/zoneOf.ts";
import { prepareObstacles } from "../shade/prepareObstacles.ts";
import type { ClearSky } from "../sky/clearSky.ts";
import { type NightSpan, nightSpans } from "../sky/nightSpans.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import type { SunTrack } from "../sky/sunTrack.ts";
import { type PreparedSource, prepareSources } from "../source/prepareSources.ts";
import { assumedRemarks } from "./assumedRemarks.ts";
import { type MemberInputs, memberInputs } from "./memberInputs.ts";
import { type PreparedSelector, prepareSelector } from "./prepareSelector.ts";
import { prepareSky } from "./prepareSky.ts";
import { requireFed } from "./requireFed.ts";
import { identityOf, prepareEachTime, type Reuse } from "./reuse.ts";
import type { Surroundings } from "./surroundings.ts";

/** A scenario ready to be stepped. Arrays have one value per step. */
export interface Prepared {
  readonly scenario: Scenario;
  readonly grid: TimeGrid;
  readonly nights: readonly NightSpan[];
  readonly sun: SunTrack;
  readonly clear: ClearSky;
  readonly light: SkyLight;
  readonly airTempC: Float64Array;
  readonly windMs: Float64Array;
  readonly groups: readonly PreparedGroup[];
  readonly loads: PreparedLoads;
  readonly bank: PreparedBank;
  readonly sources: readonly PreparedSource[];
  readonly selector: PreparedSelector;
  /** Draw of controllers, wired ahead of the disconnect, W. */
  readonly controllersW: number;
  /** Power that the 24 or 48 V converter passes on; 1 without one. */
  readonly converterShare: number;
  /** Volts at the converter's output; 0 without one, where the radios see the bank. */
  readonly converterV: number;
  /** Feed of each station, out and back with its contacts, Ω, and what its radio's peak current drops in it, V. */
  readonly feedOhm: Float64Array;
  readonly feedDropV: Float64Array;
  /** Volts at the main feed's end below which some radio falls short on its peak; 0 without stations. */
  readonly comfortV: number;
  /** Main feed, out and back with its contacts, Ω; 0 where the scenario has none. */
  readonly mainFeedOhm: number;
  /** What each step reads besides the sky. */
  readonly inputs: MemberInputs;
  /** What was assumed on the way, as sentences. */
  readonly remarks: readonly string[];
}

/** How much more light than planned crowns let through. */
export type CrownFactors = readonly [planned: 1] | readonly [planned: 1, darkest: number, lightest: number];

const AS_PLANNED: CrownFactors = [1];

/**
 * Works out, once for a scenario, everything that does not change from step to step or from member to member: the grid, the
 * sun, the weather, the shade, the schedules, the bank's tables.
 * @param reuse keeps what other scenarios share; left out, everything is prepared from scratch
 * @param throughFactors how much more light than planned crowns let through: as planned, and for an ensemble also the darkest and the lightest
 */
export function prepare(
  scenario: Scenario,
  surroundings: Surroundings = {},
  reuse: Reuse = prepareEachTime,
  throughFactors: CrownFactors = AS_PLANNED,
): { ok: true; prepared: Prepared } | { ok: false; problems: readonly Problem[] } {
  const times = timeGrid(scenario.time, zoneOf(scenario.place));
  if (!times.ok) return times;
  const { grid } = times;
  const underSky = skyParts(scenario, surroundings);
  const sky = reuse("sky", underSky, () => prepareSky(scenario, grid, surroundings));
  if (!sky.ok) return sky;
  const { sun, clear, light, airTempC, windMs, remarks } = sky.sky;
  const { latitudeDeg } = scenario.place;
  const longitudeDeg = wrapLongitudeDeg(scenario.place.longitudeDeg);
  const nights = reuse("nights", underSky, () =>
    nightSpans(latitudeDeg, longitudeDeg, grid.startMs, grid.startMs + grid.steps * grid.stepMs),
  );
  const bank = reuse("bank", [scenario.bank, underSky], () => prepareBank(scenario.bank, airTempC, grid.stepH));
  const { panels, obstacles, models } = scenario;
  const dome = reuse("dome", [models.transposition, underSky], () =>
    prepareDome(models.transposition, sun.elevationDeg, clear.extraterrestrialWm2),
  );
  const seasonShare = eventLeafShare(scenario);
  const groups = panels.map((panel) =>
    reuse("group", [panel, obstacles, models, throughFactors, underSky], () => {
      const underThem = prepareObstacles(obstacles, seasonShare, throughFactors);
      const standing = { ...panel, cooling: coolingOf(panel, obstacles) };
      return prepareGroup(standing, underThem, models, grid, sun, dome, windMs);
    }),
  );
  const loads = reuse(
    "loads",
    [scenario.gear, scenario.stations, bank.heaterW === null ? null : scenario.bank, underSky],
    () => prepareLoads(scenario.gear, scenario.stations, grid, darkShare(grid, nights), bank.heaterW),
  );
  const prepared = preparedOf({
    scenario,
    grid,
    nights,
    sun,
    clear,
    light,
    airTempC,
    windMs,
    groups,
    loads,
    bank,
    remarks: [...remarks, ...assumedRemarks(scenario, seasonShare)],
  });
  requireFed(prepared);
  return { ok: true, prepared };
}

/** What a prepared scenario is put together from; its wiring and sources follow from the scenario. */
export type PreparedParts = Pick<
  Prepared,
  | "scenario"
  | "grid"
  | "nights"
  | "sun"
  | "clear"
  | "light"
  | "airTempC"
  | "windMs"
  | "groups"
  | "loads"
  | "bank"
  | "remarks"
> & {
  /** Left out, those of its loads and its bank. */
  readonly inputs?: MemberInputs;
};

/**
 * Puts a prepared scenario together. The only place that makes one, so that all have the one shape in memory that the step loop is compiled for: objects
 * of two shapes cost the loop half its speed. `tests/promise/oneShape.test.ts` compares the shapes.
 */
export function preparedOf(parts: PreparedParts): Prepared {
  const { scenario, grid, loads, bank } = parts;
  const { mainFeed, converter } = scenario;
  const feedOhm = Float64Array.from(scenario.stations, ({ feed }) => cableOhm(radioLeadOf(feed)) + feed.contactsOhm);
  const feedDropV = feedOhm.map((ohm, s) => toGrid(ohm * loads.stations[s]!.peakA));
  const mainCableOhm = mainFeed?.cable === undefined ? 0 : cableOhm(mainFeed.cable);
  const controllersW = scenario.panels.reduce(
    (sum, group) => sum + (group.count > 0 ? group.controller.ownDrawW : 0),
    0,
  );
  const converterShare = converter?.efficiencyShare ?? 1;
  return {
    scenario,
    grid,
    nights: parts.nights,
    sun: parts.sun,
    clear: parts.clear,
    light: parts.light,
    airTempC: parts.airTempC,
    windMs: parts.windMs,
    groups: parts.groups,
    loads,
    bank,
    sources: prepareSources(scenario.sources, grid, bank.absorptionV),
    selector: prepareSelector(scenario),
    controllersW,
    converterShare,
    converterV: converter?.outputV ?? 0,
    feedOhm,
    feedDropV,
    comfortV: feedDropV.reduce((most, dropV, s) => Math.max(most, loads.stations[s]!.minimumV + dropV), 0),
    mainFeedOhm: toGrid(mainCableOhm + (mainFeed?.contactsOhm ?? 0)),
    inputs: parts.inputs ?? memberInputs(loads, bank, converterShare, controllersW),
    remarks: parts.remarks,
  };
}

/** Out and back, Ω. */
function cableOhm(cable: Parameters<typeof copperOhmPerM>[0] & { oneWayM: number; tempC: number }): number {
  return 2 * cable.oneWayM * copperOhmPerM(cable, cable.tempC);
}

/** What decides the light and the air over an event. */
export function skyParts({ place, time, weather }: Scenario, surroundings: Surroundings): readonly unknown[] {
  return [place, time, weather, identityOf(surroundings.climate), identityOf(surroundings.weatherFile)];
}

/** How much of each step lies between sunset and sunrise. */
export function darkShare(grid: TimeGrid, nights: readonly NightSpan[]): Float64Array {
  const dark = new Float64Array(grid.steps);
  for (const night of nights) {
    const first = Math.max(0, Math.floor((night.startMs - grid.startMs) / grid.stepMs));
    for (let i = first; i < grid.steps; i++) {
      const from = grid.startMs + i * grid.stepMs;
      if (from >= night.endMs) break;
      dark[i]! += (Math.min(night.endMs, from + grid.stepMs) - Math.max(night.startMs, from)) / grid.stepMs;
    }
  }
  return dark;
}
