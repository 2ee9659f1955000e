import { nextUnit } from "../chance/stream.ts";
import { toGrid } from "../grid.ts";
import type { WeatherFile } from "../place/weatherFile.ts";
import type { Problem } from "../scenario/problem.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { clearSky } from "./clearSky.ts";
import { type ClearSkySite, MAX_DAY_CLEAR_INDEX } from "./dayClearIndex.ts";
import { SOLAR_MS_PER_DEG } from "./solarDay.ts";
import { sunTrack } from "./sunTrack.ts";
import type { WholeDays } from "./wholeDays.ts";

/**
 * Blocks of 2 to 5 days: weather remembers little beyond three days (lag-3 correlation 0.1), and a typical year holds no more
 * than 43 days of one season. At each join the block comes, of three drawn, from after the day most like the last one, so
 * that less of the persistence is lost there.
 */
const SHORTEST_BLOCK = 2;
const BLOCK_LENGTHS = 4;
const TRIED = 3;
/** Days to either side of the event's middle from which a file's days are taken: the sun moves little in three weeks. */
const SEASON_DAYS = 21;
const FEWEST_DAYS = 10;
/** Below this an hour's index says more of the clear-sky model than of clouds; the nearest better hour's is taken. */
const LOW_SUN_WM2 = 50;
/** Hours may be this bright against a cloudless sky before the file and our clear sky plainly disagree. */
const BRIGHTEST_HOUR = 1.5;
const PART_MINUTES = 5;
const DAY_MS = 86_400_000;

/** The days of a weather file that may come, ready for `drawBlockDays`. */
export interface PreparedBlocks {
  readonly sourceDays: number;
  readonly slots: number;
  /** `slots` a day: clear-sky index, and air where the file has it, °C. */
  readonly slotIndex: Float64Array;
  readonly slotTempC: Float64Array | null;
  /** Per source day: its own index, and whether the next source day is the next day of the file. */
  readonly dayIndex: Float64Array;
  readonly goesOn: Uint8Array;
  /** Source days that a block may start at: those with a day before them. */
  readonly starts: Int32Array;
  /** Slot of each daylight step of the event. */
  readonly slotOfLight: Int32Array;
  /** Per step of the event: the slot whose middle comes before it, and how far it is on to the next. */
  readonly slotOfStep: Int32Array;
  readonly pastShare: Float64Array;
  readonly chosen: Int32Array;
}

/**
 * Prepares drawing whole days from a loaded file. Light is taken as a share of the file's own cloudless sky, hour by hour of
 * mean solar time, so that it fits any date of the season; the air is taken as it was.
 * @returns a problem if the file holds fewer than ten whole days of the event's season
 */
export function prepareBlocks(
  file: WeatherFile,
  site: ClearSkySite,
  grid: TimeGrid,
  whole: WholeDays,
): { ok: true; blocks: PreparedBlocks } | { ok: false; problems: Problem[] } {
  const slots = Math.round(1440 / file.stepMinutes);
  const slotMs = file.stepMinutes * 60_000;
  const longitudeDeg = file.longitudeDeg ?? site.longitudeDeg;
  const firsts = seasonDays(file, slots, grid.middleMs[grid.steps >> 1]!);
  const days = firsts.flatMap((first) => {
    const read = readDay(file, first, slots, site);
    return read === null ? [] : [{ first, ...read }];
  });
  if (days.length < FEWEST_DAYS) {
    const message = `The weather file holds ${days.length} whole days within three weeks of the event's season, and drawing from it takes at least ${FEWEST_DAYS}; load a file that covers the season, or draw from the climate instead.`;
    return { ok: false, problems: [{ code: "too-few-days", path: ["weather", "file"], message }] };
  }
  const goesOn = Uint8Array.from(days, (day, k) => (days[k + 1]?.first === day.first + slots ? 1 : 0));
  const after = days.flatMap((_, k) => (k > 0 && goesOn[k - 1] === 1 ? [k] : []));
  const slotIndex = new Float64Array(days.length * slots);
  const slotTempC = file.tempC === null ? null : new Float64Array(days.length * slots);
  days.forEach(({ first, index }, k) => {
    for (let slot = 0; slot < slots; slot++) {
      slotIndex[k * slots + slot] = toGrid(index[slot]!);
      if (slotTempC !== null) slotTempC[k * slots + slot] = toGrid(file.tempC![first + slot]!);
    }
  });
  // The file's midnight in mean solar time; the same time of day is looked up in it at the event's own longitude.
  const midnightMs = longitudeDeg * SOLAR_MS_PER_DEG - file.utcOffsetH * 3_600_000;
  const placeOf = (timeMs: number) =>
    ((((timeMs + site.longitudeDeg * SOLAR_MS_PER_DEG - midnightMs) % DAY_MS) + DAY_MS) % DAY_MS) / slotMs;
  const slotOfStep = new Int32Array(grid.steps);
  const pastShare = new Float64Array(grid.steps);
  for (let i = 0; i < grid.steps; i++) {
    const place = Math.max(0, Math.min(slots - 1, placeOf(grid.middleMs[i]!) - 0.5));
    slotOfStep[i] = Math.min(slots - 2, Math.floor(place));
    pastShare[i] = toGrid(place - slotOfStep[i]!);
  }
  return {
    ok: true,
    blocks: {
      sourceDays: days.length,
      slots,
      slotIndex,
      slotTempC,
      dayIndex: Float64Array.from(days, (day) => toGrid(day.dayIndex)),
      goesOn,
      starts: Int32Array.from(after.length > 0 ? after : days.keys()),
      slotOfLight: Int32Array.from(whole.timesMs, (timeMs) => Math.min(slots - 1, Math.floor(placeOf(timeMs)))),
      slotOfStep,
      pastShare,
      chosen: new Int32Array(whole.days),
    },
  };
}

/** The first interval of each whole day of the file that lies in the season of an instant, in the file's order. */
function seasonDays(file: WeatherFile, slots: number, middleMs: number): number[] {
  const offsetMs = file.utcOffsetH * 3_600_000;
  const slotMs = file.stepMinutes * 60_000;
  const season = yearDay(middleMs);
  const found: number[] = [];
  for (let first = 0; first + slots <= file.startMs.length; first++) {
    const startMs = file.startMs[first]!;
    if ((((startMs + offsetMs) % DAY_MS) + DAY_MS) % DAY_MS !== 0) continue;
    if (file.startMs[first + slots - 1] !== startMs + (slots - 1) * slotMs) continue;
    const away = Math.abs(yearDay(startMs + DAY_MS / 2) - season);
    if (Math.min(away, 365 - away) <= SEASON_DAYS) found.push(first);
  }
  return found;
}

function yearDay(timeMs: number): number {
  return (timeMs - Date.UTC(new Date(timeMs).getUTCFullYear(), 0, 1)) / DAY_MS;
}

/** The clear-sky index of each interval of a day and of the day; null where there is no sun or a value is missing. */
function readDay(
  file: WeatherFile,
  first: number,
  slots: number,
  site: ClearSkySite,
): { index: Float64Array; dayIndex: number } | null {
  const parts = Math.max(1, Math.round(file.stepMinutes / PART_MINUTES));
  const partMs = (file.stepMinutes * 60_000) / parts;
  const timesMs = Float64Array.from(
    { length: slots * parts },
    (_, k) => file.startMs[first + Math.floor(k / parts)]! + ((k % parts) + 0.5) * partMs,
  );
  const longitudeDeg = file.longitudeDeg ?? site.longitudeDeg;
  const sun = sunTrack(file.latitudeDeg ?? site.latitudeDeg, longitudeDeg, timesMs);
  const sky = clearSky(sun, timesMs, longitudeDeg, file.elevationM ?? site.elevationM, site.linkeTurbidity);
  const index = new Float64Array(slots).fill(Number.NaN);
  let light = 0;
  let clearLight = 0;
  for (let slot = 0; slot < slots; slot++) {
    let clear = 0;
    for (let part = 0; part < parts; part++) clear += sky.ghiWm2[slot * parts + part]! / parts;
    const ghi = file.ghiWm2[first + slot]!;
    if (!Number.isFinite(ghi) || (file.tempC !== null && !Number.isFinite(file.tempC[first + slot]!))) return null;
    light += ghi;
    clearLight += clear;
    if (clear >= LOW_SUN_WM2) index[slot] = Math.max(0, Math.min(BRIGHTEST_HOUR, ghi / clear));
  }
  if (clearLight <= 0) return null;
  const dayIndex = Math.max(0, Math.min(MAX_DAY_CLEAR_INDEX, light / clearLight));
  return { index: index.map((_, slot) => nearestNumber(index, slot) ?? dayIndex), dayIndex };
}

function nearestNumber(values: Float64Array, at: number): number | undefined {
  for (let away = 0; away < values.length; away++) {
    for (const value of [values[at - away], values[at + away]]) {
      if (value !== undefined && !Number.isNaN(value)) return value;
    }
  }
  return undefined;
}

/**
 * Chooses a day of the file for each day of the event, into `blocks.chosen`, and notes how bright each is.
 * @param state the member's stream of purpose `blocks`
 * @param outIndex clear-sky index of each day
 * @memberLoop
 */
export function drawBlockDays(blocks: PreparedBlocks, state: Uint32Array, outIndex: Float64Array): void {
  let left = 0;
  let at = -1;
  for (let day = 0; day < blocks.chosen.length; day++) {
    if (left > 0 && blocks.goesOn[at] === 1) {
      at++;
      left--;
    } else {
      left = SHORTEST_BLOCK - 1 + Math.floor(nextUnit(state) * BLOCK_LENGTHS);
      at = nextBlock(blocks, state, at);
    }
    blocks.chosen[day] = at;
    outIndex[day] = blocks.dayIndex[at]!;
  }
}

/** Where the next block starts: of a few drawn, the one whose day before is most like the last day; any for the first. */
function nextBlock(blocks: PreparedBlocks, state: Uint32Array, last: number): number {
  let best = 0;
  let least = 10;
  for (let k = 0; k < TRIED; k++) {
    const start = blocks.starts[Math.floor(nextUnit(state) * blocks.starts.length)]!;
    const before = start > 0 && last >= 0 ? Math.abs(blocks.dayIndex[start - 1]! - blocks.dayIndex[last]!) : 1;
    if (before < least) {
      least = before;
      best = start;
    }
  }
  return best;
}

/**
 * The file's air at each step of the event; straight between the middles of its intervals, a new block sets in at midnight.
 * @memberLoop
 */
export function blockAir(
  blocks: PreparedBlocks,
  slotTempC: Float64Array,
  dayOfStep: Int32Array,
  outTempC: Float64Array,
): void {
  for (let i = 0; i < outTempC.length; i++) {
    const at = blocks.chosen[dayOfStep[i]!]! * blocks.slots + blocks.slotOfStep[i]!;
    const left = slotTempC[at]!;
    outTempC[i] = left + blocks.pastShare[i]! * (slotTempC[at + 1]! - left);
  }
}
