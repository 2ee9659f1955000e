import { openStream, STREAM_WORDS } from "../chance/stream.ts";
import { toGrid } from "../grid.ts";
import type { SiteClimate } from "../place/climateAt.ts";
import type { WeatherFile } from "../place/weatherFile.ts";
import type { Problem } from "../scenario/problem.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { afternoonLean } from "./afternoonCloud.ts";
import { drawAir, type PreparedAir, prepareAir } from "./airAnomaly.ts";
import { blockAir, drawBlockDays, type PreparedBlocks, prepareBlocks } from "./blockDays.ts";
import type { ClearSky } from "./clearSky.ts";
import { moveByClimateError, prepareClimateError } from "./climateError.ts";
import {
  clearnessOfNormals,
  drawDailyNormals,
  type PreparedClearness,
  prepareDailyClearness,
} from "./dailyClearness.ts";
import { type ClearSkySite, type DayLight, MOST_DAY_INDEX } from "./dayClearIndex.ts";
import { CLOUD_FIT, drawHourlyCloud, holdDayTotal, type PreparedCloud, prepareHourlyCloud } from "./hourlyCloud.ts";
import { bringToKnown, type KnownDay, type PreparedKnown, prepareKnownDays } from "./knownDays.ts";
import { type PreparedSplit, prepareSplit, type SkyLight, splitPrepared } from "./splitDiffuse.ts";
import { type WholeDays, wholeDays } from "./wholeDays.ts";

/** What skies are drawn from: `SiteClimate`, or the same twelve values from elsewhere. */
export type SkyClimate = Pick<SiteClimate, "kt" | "sd" | "r1" | "tmaxC" | "tminC">;

/** An event under the sky. */
export interface SkyEvent {
  readonly site: ClearSkySite;
  readonly grid: TimeGrid;
  /** The cloudless sky at the grid's steps. */
  readonly clear: ClearSky;
  /** The days of the grid, from `dayLight`. */
  readonly days: DayLight;
}

export interface SkyEnsembleInput extends SkyEvent {
  readonly climate: SkyClimate;
  /** Typical error of the climate's mean Kt, such as `provenance.ktRms`; drawn for each member. 0 if left out. */
  readonly ktErrorRms?: number;
  /** What somebody knows of the days, by local day from 0; null or left out where nothing. */
  readonly knownDays?: readonly (KnownDay | null | undefined)[];
  /** Standard deviation of a day's air about the month's mean, K; 0 for the mean itself. */
  readonly airSpreadK?: number;
  readonly warmestSolarHour?: number;
}

export interface BlockSkiesInput extends SkyEvent {
  readonly file: WeatherFile;
  /** Needed where the file has no temperature. */
  readonly air?: Pick<SiteClimate, "tmaxC" | "tminC">;
  readonly warmestSolarHour?: number;
}

/**
 * Skies ready to be drawn, one member at a time. Holds room for the last member drawn, so that drawing makes nothing new:
 * one of these for each thread.
 */
export interface PreparedSkies {
  readonly whole: WholeDays;
  /** The cloudless sky's beam and sky light, rounded to the engine's grid. */
  readonly split: PreparedSplit;
  readonly dayOfStep: Int32Array;
  readonly climate: {
    readonly clearness: PreparedClearness;
    /** How far a day's normal value moves for one standard deviation of the climate's error; null where it has none. */
    readonly errorMoves: Float64Array | null;
    readonly known: PreparedKnown | null;
    readonly cloud: PreparedCloud;
  } | null;
  readonly blocks: PreparedBlocks | null;
  readonly air: PreparedAir | null;
  /** Of the last member: normal value, Kt and clear-sky index of each day. */
  readonly normalOfDay: Float64Array;
  readonly ktOfDay: Float64Array;
  readonly indexOfDay: Float64Array;
  /** Of the last member: clear-sky index of each daylight step of the whole days, and of each step of the event. */
  readonly indexOfLight: Float64Array;
  readonly indexOfStep: Float64Array;
  readonly state: Uint32Array;
}

/**
 * Prepares skies drawn from a climate: clearness from day to day (`dailyClearness`), how far the climate itself may be
 * off (`climateError`), what is known of days (`knownDays`), cloud within the day (`hourlyCloud`), air (`airAnomaly`).
 * @throws RangeError if arrays differ in length or a value leaves its range
 */
export function prepareSkyEnsemble(input: SkyEnsembleInput): PreparedSkies {
  const { site, grid, climate } = input;
  const whole = wholeDays(site, grid, input.clear, input.days);
  const clearness = prepareDailyClearness(climate, grid.dates, input.days.brightestKt);
  const errorMoves = prepareClimateError(clearness, input.ktErrorRms ?? 0);
  const known = prepareKnownDays(clearness, input.knownDays ?? [], whole.clearIndexPerKt);
  const lean = afternoonLean(site, whole.timesMs);
  const cloud = prepareHourlyCloud(whole.dayStart, whole.clearWm2, grid.stepH, lean);
  const usual = clearness.meanKt.map((kt, day) => Math.min(MOST_DAY_INDEX, kt * whole.clearIndexPerKt[day]!));
  const { tmaxC, tminC } = climate;
  const air = prepareAir(tmaxC, tminC, grid, site.longitudeDeg, usual, input.airSpreadK, input.warmestSolarHour);
  return room(input, whole, { climate: { clearness, errorMoves, known, cloud }, blocks: null, air });
}

/**
 * Prepares skies drawn from a weather file in blocks of days of the event's season; see `blockDays`. Days that are known
 * cannot be honoured here.
 * @returns problems, in sentences, if the file holds too few days or neither it nor the climate has a temperature
 */
export function prepareBlockSkies(
  input: BlockSkiesInput,
): { ok: true; skies: PreparedSkies } | { ok: false; problems: Problem[] } {
  const { site, grid, file } = input;
  const whole = wholeDays(site, grid, input.clear, input.days);
  const found = prepareBlocks(file, site, grid, whole);
  if (!found.ok) return found;
  if (file.tempC === null && input.air === undefined) {
    const message =
      "The weather file has no temperature and none was given beside it; type in weather.air, or load a file with air temperature.";
    return { ok: false, problems: [{ code: "no-temperature", path: ["weather", "air"], message }] };
  }
  const mean = found.blocks.dayIndex.reduce((sum, index) => sum + index, 0) / found.blocks.sourceDays;
  const usual = new Float64Array(whole.days).fill(mean);
  const { air: given, warmestSolarHour } = input;
  const air =
    file.tempC === null
      ? prepareAir(given!.tmaxC, given!.tminC, grid, site.longitudeDeg, usual, undefined, warmestSolarHour)
      : null;
  return { ok: true, skies: room(input, whole, { climate: null, blocks: found.blocks, air }) };
}

function room(
  { grid, clear, days }: SkyEvent,
  whole: WholeDays,
  ways: Pick<PreparedSkies, "climate" | "blocks" | "air">,
): PreparedSkies {
  const sky = {
    ghiWm2: clear.ghiWm2.map(toGrid),
    dniWm2: clear.dniWm2.map(toGrid),
    dhiWm2: clear.dhiWm2.map(toGrid),
    extraterrestrialWm2: clear.extraterrestrialWm2.map(toGrid),
    sinElevation: clear.sinElevation.map(toGrid),
  };
  const split = prepareSplit(sky, days, grid.stepH);
  return {
    whole,
    split,
    dayOfStep: days.dayOfStep,
    ...ways,
    normalOfDay: new Float64Array(whole.days),
    ktOfDay: new Float64Array(whole.days),
    indexOfDay: new Float64Array(whole.days),
    indexOfLight: new Float64Array(whole.clearWm2.length),
    // A lit step that belongs to no day's light would stay no number, and nobody would run it.
    indexOfStep: Float64Array.from(clear.ghiWm2, (ghi) => (toGrid(ghi) > 0 ? Number.NaN : 0)),
    state: new Uint32Array(STREAM_WORDS),
  };
}

/**
 * Draws the sky of one member over the whole event: the same member of the same seed always meets the same sky, whatever
 * was drawn before it. Allocates nothing.
 *
 * Each civil day's light on the level, over all its hours, is Kt × H0 of the day's draw, also where the event covers only
 * some of them; none is brighter than the cleanest cloudless one (`brightestKt`).
 * @param words from `seedWords`
 * @param light where the light goes; one value per step
 * @param airTempC where the air goes; one value per step
 * @memberLoop
 */
export function drawSky(
  skies: PreparedSkies,
  words: Int32Array,
  member: number,
  light: SkyLight,
  airTempC: Float64Array,
): void {
  const { whole, climate, blocks, air, state, indexOfDay, indexOfLight, indexOfStep } = skies;
  if (climate !== null) {
    openStream(state, words, member, "sky");
    drawDailyNormals(climate.clearness, state, skies.normalOfDay);
    if (climate.errorMoves !== null) {
      openStream(state, words, member, "climate");
      moveByClimateError(climate.errorMoves, state, skies.normalOfDay);
    }
    if (climate.known !== null) {
      openStream(state, words, member, "sureness");
      bringToKnown(climate.known, state, skies.normalOfDay);
    }
    clearnessOfNormals(climate.clearness, skies.normalOfDay, skies.ktOfDay);
    for (let day = 0; day < whole.days; day++) {
      indexOfDay[day] = Math.min(MOST_DAY_INDEX, skies.ktOfDay[day]! * whole.clearIndexPerKt[day]!);
    }
    openStream(state, words, member, "cloud");
    drawHourlyCloud(climate.cloud, state, indexOfDay, indexOfLight);
  } else if (blocks !== null) {
    openStream(state, words, member, "blocks");
    drawBlockDays(blocks, state, indexOfDay);
    for (let day = 0; day < whole.days; day++) {
      const perKt = whole.clearIndexPerKt[day]!;
      skies.ktOfDay[day] = perKt > 0 ? indexOfDay[day]! / perKt : 0;
      const source = blocks.chosen[day]! * blocks.slots;
      const from = whole.dayStart[day]!;
      const to = whole.dayStart[day + 1]!;
      for (let k = from; k < to; k++) indexOfLight[k] = blocks.slotIndex[source + blocks.slotOfLight[k]!]!;
      holdDayTotal(whole.clearWm2, from, to, indexOfDay[day]!, CLOUD_FIT.brightest, indexOfLight);
    }
  }
  for (let k = 0; k < indexOfLight.length; k++) {
    const step = whole.step[k]!;
    if (step >= 0) indexOfStep[step] = indexOfLight[k]!;
  }
  splitPrepared(skies.split, indexOfDay, indexOfStep, light);
  if (air !== null) {
    openStream(state, words, member, "air");
    drawAir(air, state, indexOfDay, airTempC);
  } else if (blocks !== null && blocks.slotTempC !== null) {
    blockAir(blocks, blocks.slotTempC, skies.dayOfStep, airTempC);
  }
}
