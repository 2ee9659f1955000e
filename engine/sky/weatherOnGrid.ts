import type { WeatherFile } from "../place/weatherFile.ts";
import { requireSameLength } from "../require.ts";
import type { Problem } from "../scenario/problem.ts";
import type { ClearSky } from "./clearSky.ts";
import type { DayLight } from "./dayClearIndex.ts";
import { cleanestBeamShare, makeSkyLight, type SkyLight, splitDiffuse } from "./splitDiffuse.ts";

/** The steps of an event, as far as weather is concerned. */
export interface StepGrid {
  readonly startMs: number;
  readonly stepMs: number;
  readonly steps: number;
  readonly middleMs: Float64Array;
}

/** A file's weather at the steps of an event. */
export interface GridWeather {
  readonly light: SkyLight;
  /** °C; null where the file has none. */
  readonly tempC: Float64Array | null;
  /** m/s; null where the file has none. */
  readonly windMs: Float64Array | null;
  /** How the file was matched to the event, in sentences for the screen. */
  readonly notes: readonly string[];
}

/** A clear sky this dim says nothing about when in the hour the light came: it is spread evenly. */
const DIM_WM2 = 1;
/** Beam and sky light together may be this share off GHI before the three are said to disagree. */
const DISAGREE_SHARE = 0.05;
/** In intervals dimmer than this the zero of an instrument is more than that; nothing is said of them. */
const TELLING_WM2 = 50;
const DAY_MS = 86_400_000;

/**
 * Lays a weather file on the steps of an event. Each interval keeps its energy and takes the shape of the clear sky inside
 * it: beam and sky light each by its own where the file has more than GHI (its DNI before GHI less DHI), else GHI by shape and `splitDiffuse`. Twilight,
 * when our sun is down, is spread evenly. Temperature and wind run straight from the middle of one interval to the
 * next. An interval that the event only touches is taken at its mean.
 *
 * Files of an actual year are matched by date where they cover the event, else by calendar day and hour; typical years
 * always by calendar. 29 February falls back on the 28th. The notes say which.
 * @param clear the clear sky at the same steps
 * @param days their days, from `dayLight`
 * @returns a problem that names both ranges if the file lacks some of the event's days
 * @throws RangeError if `clear` and `grid` differ in length
 */
export function weatherOnGrid(
  file: WeatherFile,
  grid: StepGrid,
  clear: ClearSky,
  days: Pick<DayLight, "dayOfStep" | "clearIndexPerKt">,
): { ok: true; weather: GridWeather } | { ok: false; problems: Problem[] } {
  requireSameLength({ middleMs: grid.middleMs, ghiWm2: clear.ghiWm2 });
  const slots = slotsOf(file, grid);
  if ("problem" in slots) return { ok: false, problems: [slots.problem] };
  const { dniWm2, dhiWm2 } = file;
  const { light, notes } =
    dniWm2 === null && dhiWm2 === null
      ? { light: lightByShape(file, grid, clear, days, slots), notes: [] }
      : lightByParts(file, grid, clear, slots);
  return {
    ok: true,
    weather: {
      light,
      tempC: file.tempC && betweenMiddles(file.tempC, grid, slots),
      windMs: file.windMs && betweenMiddles(file.windMs, grid, slots),
      notes: [...file.notes, ...slots.notes, ...notes],
    },
  };
}

/** The file's intervals in the event's own time: slot k lasts `slotMs` from `fromMs + k × slotMs`. */
interface Slots {
  readonly fromMs: number;
  readonly slotMs: number;
  /** Position in the file of each slot, with one slot more on either side; -1 where the file has none there. */
  readonly source: Int32Array;
  readonly notes: readonly string[];
}

function slotsOf(file: WeatherFile, grid: StepGrid): Slots | { problem: Problem } {
  const slotMs = file.stepMinutes * 60_000;
  const phaseMs = modulo(file.startMs[0]!, slotMs);
  const endMs = grid.startMs + grid.steps * grid.stepMs;
  const fromMs = Math.floor((grid.startMs - phaseMs) / slotMs) * slotMs + phaseMs - slotMs;
  const count = Math.ceil((endMs - fromMs) / slotMs) + 1;
  const starts = Array.from({ length: count }, (_, k) => fromMs + k * slotMs);
  const isWhole = (source: Int32Array) => source.subarray(1, count - 1).every((at) => at >= 0);

  if (!file.typicalYear) {
    const byDate = new Map(Array.from(file.startMs, (startMs, i) => [startMs, i]));
    const source = Int32Array.from(starts, (startMs) => byDate.get(startMs) ?? -1);
    if (isWhole(source)) return { fromMs, slotMs, source, notes: [] };
  }
  const byCalendar = new Map<number, number>();
  file.startMs.forEach((startMs, i) => {
    const key = calendarKey(startMs, file.utcOffsetH);
    if (!byCalendar.has(key)) byCalendar.set(key, i);
  });
  const source = Int32Array.from(starts, (startMs) => byCalendar.get(calendarKey(startMs, file.utcOffsetH)) ?? -1);
  const event = `${dateText(grid.startMs, file)} to ${dateText(endMs - 1, file)}`;
  const has = file.typicalYear
    ? "a typical year"
    : `${dateText(file.startMs[0]!, file)} to ${dateText(file.startMs.at(-1)!, file)}`;
  if (isWhole(source)) {
    const note = file.typicalYear
      ? "The file is a typical year: its days stand for the same calendar days of the event."
      : `The file holds ${has}; its days stand for the same calendar days of the event, ${event}.`;
    const leap = starts.some((startMs) => isLeapDay(startMs, file.utcOffsetH) && startMs + slotMs > grid.startMs);
    return { fromMs, slotMs, source, notes: leap ? [note, "29 February takes the weather of the 28th."] : [note] };
  }
  const lacking = 1 + source.subarray(1, count - 1).indexOf(-1);
  const first = new Date(starts[lacking]! + file.utcOffsetH * 3_600_000).toISOString().slice(0, 16).replace("T", " ");
  const message = `The weather file holds ${has}, and the event runs from ${event}: there is no weather for ${first}; move the event into the file's days or load a file that covers it.`;
  return { problem: { code: "weather-not-covered", path: ["time"], message } };
}

function lightByShape(
  file: WeatherFile,
  grid: StepGrid,
  clear: ClearSky,
  days: Pick<DayLight, "dayOfStep" | "clearIndexPerKt">,
  slots: Slots,
): SkyLight {
  const meanClear = slotMeans(grid, slots, (i) => clear.ghiWm2[i]!);
  const index = new Float64Array(grid.steps);
  const even = new Float64Array(grid.steps);
  eachOverlap(grid, slots, (i, k, share) => {
    const ghi = file.ghiWm2[slots.source[k]!]!;
    if (meanClear[k]! > DIM_WM2) index[i]! += (share * ghi) / meanClear[k]!;
    else even[i]! += share * ghi;
  });
  const light = makeSkyLight(grid.steps);
  splitDiffuse(clear, days, grid.stepMs / 3_600_000, index, light);
  for (let i = 0; i < grid.steps; i++) {
    light.dhiWm2[i]! += even[i]!;
    light.ghiWm2[i]! += even[i]!;
  }
  return light;
}

/** What a file's three columns say of one interval, on the level, W/m². */
interface Parts {
  readonly beamWm2: number;
  readonly skyWm2: number;
}

/**
 * Beam and sky light of an interval. Measured beam counts before what GHI less DHI leaves of it, which gathers the errors of two
 * instruments. Where all three are there and agree, beam and sky are as measured, and GHI is their sum (common practice of radiation
 * networks: the sum is the better global). Where they disagree, the beam stays and the sky gets the rest of GHI, unless the beam alone is more
 * than GHI: then GHI and DHI stand.
 * @param ofDniWm2 the file's DNI brought to the level; null where it has none
 */
function partsOf(ghi: number, ofDniWm2: number | null, dhi: number | null): Parts {
  if (ofDniWm2 === null) {
    const beamWm2 = Math.max(0, Math.min(ghi, ghi - dhi!));
    return { beamWm2, skyWm2: ghi - beamWm2 };
  }
  if (dhi === null) {
    const beamWm2 = Math.min(ghi, ofDniWm2);
    return { beamWm2, skyWm2: ghi - beamWm2 };
  }
  if (!disagree(ghi, ofDniWm2, dhi)) return { beamWm2: ofDniWm2, skyWm2: dhi };
  if (ofDniWm2 <= ghi) return { beamWm2: ofDniWm2, skyWm2: ghi - ofDniWm2 };
  return partsOf(ghi, null, dhi);
}

function disagree(ghi: number, ofDniWm2: number, dhi: number): boolean {
  return Math.abs(ofDniWm2 + dhi - ghi) > DISAGREE_SHARE * ghi;
}

function lightByParts(
  file: WeatherFile,
  grid: StepGrid,
  clear: ClearSky,
  slots: Slots,
): { light: SkyLight; notes: string[] } {
  const meanBeam = slotMeans(grid, slots, (i) => clear.dniWm2[i]! * clear.sinElevation[i]!);
  const meanDni = slotMeans(grid, slots, (i) => clear.dniWm2[i]!);
  const meanSky = slotMeans(grid, slots, (i) => clear.dhiWm2[i]!);
  const { ghiWm2, dniWm2, dhiWm2 } = file;
  const hasBeam = (k: number) => meanBeam[k]! > DIM_WM2;
  const ofDni = (k: number) => {
    if (dniWm2 === null) return null;
    return hasBeam(k) ? (dniWm2[slots.source[k]!]! * meanBeam[k]!) / meanDni[k]! : 0;
  };
  const light = makeSkyLight(grid.steps);
  eachOverlap(grid, slots, (i, k, share) => {
    const at = slots.source[k]!;
    const ghi = ghiWm2[at]!;
    const dhi = dhiWm2 === null ? null : dhiWm2[at]!;
    const { beamWm2, skyWm2 } = hasBeam(k) ? partsOf(ghi, ofDni(k), dhi) : { beamWm2: 0, skyWm2: ghi };
    if (beamWm2 > 0) light.dniWm2[i]! += (share * beamWm2 * clear.dniWm2[i]!) / meanBeam[k]!;
    light.dhiWm2[i]! += share * (meanSky[k]! > DIM_WM2 ? (skyWm2 * clear.dhiWm2[i]!) / meanSky[k]! : skyWm2);
  });
  for (let i = 0; i < grid.steps; i++) {
    const sinElevation = clear.sinElevation[i]!;
    const aboveWm2 = clear.extraterrestrialWm2[i]!;
    // What GHI less DHI makes of a low sun is two small errors over a small sine; a measured beam is believed.
    const cleanest = dniWm2 === null && sinElevation > 0 ? cleanestBeamShare(sinElevation) * aboveWm2 : aboveWm2;
    const kept = Math.min(light.dniWm2[i]!, Math.max(clear.dniWm2[i]!, cleanest));
    light.dhiWm2[i]! += (light.dniWm2[i]! - kept) * sinElevation;
    light.dniWm2[i] = kept;
    light.ghiWm2[i] = light.dhiWm2[i]! + kept * sinElevation;
  }
  return { light, notes: disagreements(file, slots, hasBeam, ofDni) };
}

/** Whether, and by how much, a file's three columns contradict one another in the event's intervals, and what was made of it. */
function disagreements(
  { ghiWm2, dhiWm2, stepMinutes }: WeatherFile,
  slots: Slots,
  hasBeam: (slot: number) => boolean,
  ofDni: (slot: number) => number | null,
): string[] {
  let looked = 0;
  let off = 0;
  let offGhi = 0;
  let offSum = 0;
  for (let k = 1; k + 1 < slots.source.length; k++) {
    const at = slots.source[k]!;
    const beam = ofDni(k);
    if (beam === null || dhiWm2 === null || !hasBeam(k) || ghiWm2[at]! < TELLING_WM2) continue;
    looked++;
    if (!disagree(ghiWm2[at]!, beam, dhiWm2[at]!)) continue;
    off++;
    offGhi += ghiWm2[at]!;
    offSum += beam + dhiWm2[at]!;
  }
  if (off === 0) return [];
  const by = Math.round(100 * (offSum / offGhi - 1));
  const apart = by === 0 ? "now more, now less" : `${Math.abs(by)} % ${by > 0 ? "over" : "under"} GHI together`;
  const intervals = stepMinutes === 60 ? "hours" : `intervals of ${stepMinutes} min`;
  return [
    `In ${off} of the event's ${looked} bright ${intervals}, the file's DNI and DHI add up to something else than its GHI by more than 5 % (${apart}): there the beam is the file's DNI and the sky gets the rest of GHI; where DNI alone is more than GHI, GHI and DHI stand.`,
  ];
}

/** The mean over each slot of something that has a value per step, counting the part of each step inside the slot. */
function slotMeans(grid: StepGrid, slots: Slots, valueAt: (step: number) => number): Float64Array {
  const sum = new Float64Array(slots.source.length);
  const weight = new Float64Array(slots.source.length);
  eachOverlap(grid, slots, (i, k, share) => {
    sum[k]! += share * valueAt(i);
    weight[k]! += share;
  });
  return sum.map((total, k) => (weight[k]! > 0 ? total / weight[k]! : 0));
}

/** Visits every pair of a step and a slot that share time; `share` is the part of the step that lies in the slot. */
function eachOverlap(grid: StepGrid, slots: Slots, visit: (step: number, slot: number, share: number) => void): void {
  for (let i = 0; i < grid.steps; i++) {
    const startMs = grid.startMs + i * grid.stepMs;
    const endMs = startMs + grid.stepMs;
    for (let k = Math.floor((startMs - slots.fromMs) / slots.slotMs); slots.fromMs + k * slots.slotMs < endMs; k++) {
      const slotStartMs = slots.fromMs + k * slots.slotMs;
      const sharedMs = Math.min(endMs, slotStartMs + slots.slotMs) - Math.max(startMs, slotStartMs);
      if (sharedMs > 0) visit(i, k, sharedMs / grid.stepMs);
    }
  }
}

/** Straight from the middle of one slot to the middle of the next; level where the file ends. */
function betweenMiddles(values: Float64Array, grid: StepGrid, slots: Slots): Float64Array {
  return grid.middleMs.map((middleMs) => {
    const place = (middleMs - slots.fromMs) / slots.slotMs - 0.5;
    const k = Math.floor(place);
    const left = slots.source[k]!;
    const right = slots.source[k + 1]!;
    if (left < 0) return values[right]!;
    if (right < 0) return values[left]!;
    return values[left]! + (place - k) * (values[right]! - values[left]!);
  });
}

/** One number for month, day and minute on the file's clock; 29 February reads as the 28th. */
function calendarKey(timeMs: number, utcOffsetH: number): number {
  const clockMs = timeMs + utcOffsetH * 3_600_000;
  const date = new Date(clockMs);
  const day = isLeapDay(timeMs, utcOffsetH) ? 28 : date.getUTCDate();
  return (date.getUTCMonth() * 32 + day) * 1440 + modulo(clockMs, DAY_MS) / 60_000;
}

function isLeapDay(timeMs: number, utcOffsetH: number): boolean {
  const date = new Date(timeMs + utcOffsetH * 3_600_000);
  return date.getUTCMonth() === 1 && date.getUTCDate() === 29;
}

function dateText(timeMs: number, file: WeatherFile): string {
  return new Date(timeMs + file.utcOffsetH * 3_600_000).toISOString().slice(0, 10);
}

function modulo(value: number, by: number): number {
  return ((value % by) + by) % by;
}
