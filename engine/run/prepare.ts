import { wrapLongitudeDeg } from "../angle.ts";
import { copperOhmPerM } from "../array/copperOhmPerM.ts";
import { type PreparedGroup, prepareGroups } from "../array/prepareGroup.ts";
import { type PreparedBank, prepareBank } from "../bank/prepareBank.ts";
import { type PreparedLoads, prepareLoads } from "../load/prepareLoads.ts";
import type { ClimateTables } from "../place/climateTables.ts";
import type { WeatherFile } from "../place/weatherFile.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { type TimeGrid, timeGrid } from "../scenario/timeGrid.ts";
import { zoneOf } from "../scenario/zoneOf.ts";
import { type NightSpan, nightSpans } from "../sky/nightSpans.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import { type PreparedSource, prepareSources } from "../source/prepareSources.ts";
import { type PreparedSelector, prepareSelector } from "./prepareSelector.ts";
import { prepareSky } from "./prepareSky.ts";

/** What a scenario needs from outside the document. */
export interface Surroundings {
  /** Climate of the world; needed for typical weather, and for temperature where none is typed in. */
  readonly climate?: ClimateTables;
  /** The weather file that the scenario names, already read. */
  readonly weatherFile?: WeatherFile;
}

/** A scenario ready to be stepped. Arrays have one value per step. */
export interface Prepared {
  readonly scenario: Scenario;
  readonly grid: TimeGrid;
  readonly nights: readonly NightSpan[];
  readonly sun: { readonly azimuthDeg: Float64Array; readonly elevationDeg: Float64Array };
  readonly clear: import("../sky/clearSky.ts").ClearSky;
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
  /** Feed of each station, out and back with its contacts, Ω. */
  readonly feedOhm: Float64Array;
  /** What was assumed on the way, as sentences. */
  readonly remarks: readonly string[];
}

/**
 * Works out, once for a scenario, everything that does not change from step to step or from member to member: the grid, the
 * sun, the weather, the shade, the schedules, the bank's tables.
 */
export function prepare(
  scenario: Scenario,
  surroundings: Surroundings = {},
): { ok: true; prepared: Prepared } | { ok: false; problems: readonly Problem[] } {
  const times = timeGrid(scenario.time, zoneOf(scenario.place));
  if (!times.ok) return times;
  const { grid } = times;
  const sky = prepareSky(scenario, grid, surroundings);
  if (!sky.ok) return sky;
  const { sun, clear, light, airTempC, windMs, remarks } = sky.sky;
  const { latitudeDeg } = scenario.place;
  const longitudeDeg = wrapLongitudeDeg(scenario.place.longitudeDeg);
  const nights = nightSpans(latitudeDeg, longitudeDeg, grid.startMs, grid.startMs + grid.steps * grid.stepMs);
  const bank = prepareBank(scenario.bank, airTempC, grid.stepH);
  const groups = prepareGroups(scenario.panels, scenario.obstacles, scenario.models, grid, sun, clear, windMs);
  const feedOhm = Float64Array.from(scenario.stations, ({ feed }) => {
    return 2 * feed.cable.oneWayM * copperOhmPerM(feed.cable, feed.cable.tempC) + feed.contactsOhm;
  });
  return {
    ok: true,
    prepared: {
      scenario,
      grid,
      nights,
      sun,
      clear,
      light,
      airTempC,
      windMs,
      groups,
      loads: prepareLoads(scenario.gear, scenario.stations, grid, darkShare(grid, nights)),
      bank,
      sources: prepareSources(scenario.sources, grid, bank.absorptionV),
      selector: prepareSelector(scenario),
      controllersW: scenario.panels.reduce((sum, group) => sum + (group.count > 0 ? group.controller.ownDrawW : 0), 0),
      converterShare: scenario.converter?.efficiencyShare ?? 1,
      converterV: scenario.converter?.outputV ?? 0,
      feedOhm,
      remarks,
    },
  };
}

/** How much of each step lies between sunset and sunrise. */
function darkShare(grid: TimeGrid, nights: readonly NightSpan[]): Float64Array {
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
