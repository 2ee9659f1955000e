import { nextNormal } from "../chance/stream.ts";
import { toGrid } from "../grid.ts";
import { requireRange, requireSameLength } from "../require.ts";
import { MAX_DAY_CLEAR_INDEX } from "./dayClearIndex.ts";
import { hourMixture, mixtureValue } from "./hourMixture.ts";
import { fillTable, readTable, TABLE_NODES } from "./johnsonSb.ts";

/**
 * Cloud from hour to hour, fitted on 122 measured days (docs/fits/hourly-cloud.md). Index: light on the level over a
 * cloudless sky's.
 */
export const CLOUD_FIT = {
  /** Hours in which the correlation of the index falls to 1/e: on cloudy days, and on cloudless ones, where what is left are single clouds. */
  memoryH: 3.6,
  cloudlessMemoryH: 0.3,
  /** Days between these are on the way from one to the other. */
  cloudyUpTo: 0.9,
  cloudlessFrom: 1,
  /** Brightest hour: cloud edges add light to a cloudless sky's. */
  brightest: 1.12,
  /** Spread of hours within a day of index C: `spread × C^rise × (1.029 − C)^fall`, at least `least`. */
  spread: 1.18,
  rise: 1.69,
  fall: 0.88,
  least: 0.03,
  /** What bounds and holding the day's total leave of the spread that is drawn. */
  keptShare: 0.97,
} as const;

/** Where spread within the day ends: a day this bright is cloudless. */
const CLOUDLESS = 1.029;
/** Nodes of the day's index for which the spread of hours is worked out, from 0 to `MAX_DAY_CLEAR_INDEX`, and tables laid between two of them. */
const DAY_NODES = 51;
const TABLES_PER_NODE = 5;
const DAY_TABLES = (DAY_NODES - 1) * TABLES_PER_NODE + 1;
const TABLES_PER_INDEX = (DAY_TABLES - 1) / MAX_DAY_CLEAR_INDEX;

/**
 * Standard deviation of the hours' clear-sky index within a day, weighted by the cloudless sky's light.
 * @param dayIndex the day's own clear-sky index, 0…1.25
 */
export function hourlySpread(dayIndex: number): number {
  const { spread, rise, fall, least } = CLOUD_FIT;
  if (dayIndex <= 0 || dayIndex >= CLOUDLESS) return least;
  return Math.max(least, spread * dayIndex ** rise * (CLOUDLESS - dayIndex) ** fall);
}

/** Daylight of whole days, ready for `drawHourlyCloud`. */
export interface PreparedCloud {
  /** Where each day's daylight steps start in the arrays below; one more value than days. */
  readonly dayStart: Int32Array;
  /** A cloudless sky's light on the level at each daylight step, W/m². */
  readonly clearWm2: Float64Array;
  /** How much of the normal value lasts from a step to the next, and what is new in it, for each table. */
  readonly memory: Float64Array;
  readonly drive: Float64Array;
  /** What brings the spread within a day, about its mean, to that of a standard normal value by the hour. */
  readonly scale: Float64Array;
  /** A cloudless sky's light of each day, the sum of its steps'. */
  readonly clearOfDayWm2: Float64Array;
  /** How far each step's normal value leans to bright or dull by the hour of the day, from `afternoonLean`. */
  readonly lean: Float64Array;
  /** What of that counts on a day of each table: a cloudless day has no cloud that could build. */
  readonly leanShare: Float64Array;
  /** The clear-sky index by normal value, one table for each 0.005 of the day's index: no day is further than half of that from one. */
  readonly indexTable: Float64Array;
}

/**
 * Prepares cloud for daylight steps of any length from minutes to hours. Below the hour the index wanders on smoothly
 * with the same memory; flicker within minutes is left out, because the harvest follows light nearly in proportion.
 * @param dayStart one more value than days, rising
 * @param clearWm2 one value per daylight step of whole days, above 0
 * @param stepH hours in a step, 0…3
 * @param lean from `afternoonLean`, one value per daylight step; none if left out
 */
export function prepareHourlyCloud(
  dayStart: Int32Array,
  clearWm2: Float64Array,
  stepH: number,
  lean: Float64Array = new Float64Array(clearWm2.length),
): PreparedCloud {
  requireRange({ stepH }, 1 / 3600, 3);
  requireSameLength({ clearWm2, lean });
  const weights = clearWm2.map(toGrid);
  const sunniest = sunniestDay(dayStart, clearWm2);
  const memory = new Float64Array(DAY_TABLES);
  const scale = new Float64Array(DAY_TABLES);
  for (let table = 0; table < DAY_TABLES; table++) {
    const memoryH = memoryOf(table / TABLES_PER_INDEX);
    memory[table] = toGrid(stepMemory(stepH, memoryH));
    const within = withinDayShare(sunniest, stepH, memory[table]!);
    scale[table] = toGrid(Math.sqrt(longStepShare(stepH, memoryH) / within) / CLOUD_FIT.keptShare);
  }
  return {
    dayStart,
    clearWm2: weights,
    clearOfDayWm2: Float64Array.from({ length: Math.max(0, dayStart.length - 1) }, (_, day) =>
      weights.subarray(dayStart[day]!, dayStart[day + 1]!).reduce((sum, wm2) => sum + wm2, 0),
    ),
    lean,
    leanShare: memory.map((_, table) => toGrid(1 - wayToCloudless(table / TABLES_PER_INDEX))),
    memory,
    drive: memory.map((value) => toGrid(Math.sqrt(1 - value * value))),
    scale,
    indexTable: indexTables(),
  };
}

/** Hours of memory on a day of this index. */
function memoryOf(dayIndex: number): number {
  const { memoryH, cloudlessMemoryH } = CLOUD_FIT;
  return memoryH + wayToCloudless(dayIndex) * (cloudlessMemoryH - memoryH);
}

/** How far a day of this index is on the way from cloudy to cloudless, 0…1. */
function wayToCloudless(dayIndex: number): number {
  const { cloudyUpTo, cloudlessFrom } = CLOUD_FIT;
  return Math.max(0, Math.min(1, (dayIndex - cloudyUpTo) / (cloudlessFrom - cloudyUpTo)));
}

/**
 * What lasts from a step to the next of a process that forgets exponentially: within the hour its own correlation, so that hours made up of
 * steps remember as hours do; from an hour on that of means over steps.
 */
function stepMemory(stepH: number, memoryH: number): number {
  const step = stepH / memoryH;
  if (stepH < 1) return Math.exp(-step);
  return (1 - Math.exp(-step)) ** 2 / (2 * (step - 1 + Math.exp(-step)));
}

let knownTables: Float64Array | null = null;

/** The clear-sky index by normal value: the same for every place and event, so worked out once (45 ms) and only read from then on. */
function indexTables(): Float64Array {
  knownTables ??= makeIndexTables();
  return knownTables;
}

function makeIndexTables(): Float64Array {
  const tables = new Float64Array(DAY_TABLES * TABLE_NODES);
  for (let node = 0; node < DAY_NODES; node++) {
    const dayIndex = (node * TABLES_PER_NODE) / TABLES_PER_INDEX;
    const high = Math.max(CLOUD_FIT.brightest, dayIndex + 0.02);
    const mixture = hourMixture(dayIndex, hourlySpread(dayIndex), high);
    fillTable(tables, node * TABLES_PER_NODE * TABLE_NODES, (z) => mixtureValue(mixture, z));
  }
  for (let k = 0; k < tables.length; k++) {
    const table = Math.floor(k / TABLE_NODES);
    const past = table % TABLES_PER_NODE;
    if (past === 0) continue;
    const before = tables[k - past * TABLE_NODES]!;
    const after = tables[k + (TABLES_PER_NODE - past) * TABLE_NODES]!;
    tables[k] = toGrid(before + ((after - before) * past) / TABLES_PER_NODE);
  }
  return tables;
}

/** Variance of the mean over a stretch, as a share of the process's own; the stretch in units of its memory. */
function meanVariance(stretch: number): number {
  return (2 * (stretch - 1 + Math.exp(-stretch))) / (stretch * stretch);
}

/** The wanted variance of steps longer than an hour, as a share of that of hours; 1 for shorter steps, which make up hours. */
function longStepShare(stepH: number, memoryH: number): number {
  return stepH <= 1 ? 1 : meanVariance(stepH / memoryH) / meanVariance(1 / memoryH);
}

/** A cloudless sky's light at the steps of the sunniest day, where the most is at stake. */
function sunniestDay(dayStart: Int32Array, clearWm2: Float64Array): Float64Array {
  let best = new Float64Array(0);
  let most = 0;
  for (let day = 0; day + 1 < dayStart.length; day++) {
    const of = clearWm2.subarray(dayStart[day]!, dayStart[day + 1]!);
    const total = of.reduce((sum, wm2) => sum + wm2, 0);
    if (total > most) {
      most = total;
      best = of.slice();
    }
  }
  return best;
}

/** What is left of the variance of steps when hours are formed of them and the mean of the day is taken out. */
function withinDayShare(clearWm2: Float64Array, stepH: number, memory: number): number {
  const perHour = Math.max(1, Math.round(1 / stepH));
  let hour = 0;
  for (let k = 0; k < perHour; k++) {
    for (let other = 0; other < perHour; other++) hour += memory ** Math.abs(k - other) / (perHour * perHour);
  }
  const total = clearWm2.reduce((sum, wm2) => sum + wm2, 0);
  if (total === 0) return hour;
  // Each step with all before it: what they add up to fades by `memory` from step to step.
  let before = 0;
  let day = 0;
  for (const wm2 of clearWm2) {
    before *= memory;
    day += (wm2 * wm2 + 2 * wm2 * before) / (total * total);
    before += wm2;
  }
  return Math.max(0.2, hour - day);
}

/**
 * Draws the clear-sky index of each daylight step of one member, so that each day's light is exactly the day's index times
 * a cloudless day's; one draw a step.
 * @param state the member's stream of purpose `cloud`
 * @param dayIndex clear-sky index of each day, 0…1.25
 * @param out one value per daylight step, 0…1.12; the day's own throughout on days brighter than that
 * @memberLoop
 */
export function drawHourlyCloud(
  cloud: PreparedCloud,
  state: Uint32Array,
  dayIndex: Float64Array,
  out: Float64Array,
): void {
  const { dayStart, clearWm2, clearOfDayWm2, lean, indexTable } = cloud;
  for (let day = 0; day < clearOfDayWm2.length; day++) {
    const from = dayStart[day]!;
    const to = dayStart[day + 1]!;
    const place = dayIndex[day]! * TABLES_PER_INDEX + 0.5;
    const ofDay = place < DAY_TABLES ? place | 0 : DAY_TABLES - 1;
    const table = TABLE_NODES * ofDay;
    const memory = cloud.memory[ofDay]!;
    const drive = cloud.drive[ofDay]!;
    const scale = cloud.scale[ofDay]!;
    const leanShare = cloud.leanShare[ofDay]!;
    let z = 0;
    let sum = 0;
    for (let k = from; k < to; k++) {
      z = k === from ? nextNormal(state) : memory * z + drive * nextNormal(state);
      const leaning = z + leanShare * lean[k]!;
      out[k] = leaning;
      sum += leaning * clearWm2[k]!;
    }
    // What all hours have in common is the day's own index; only how they differ among themselves is drawn here.
    const mean = to > from ? sum / clearOfDayWm2[day]! : 0;
    let lightWm2 = 0;
    for (let k = from; k < to; k++) {
      const index = readTable(indexTable, table, scale * (out[k]! - mean));
      out[k] = index;
      lightWm2 += index * clearWm2[k]!;
    }
    if (to > from) bringTo(dayIndex[day]!, lightWm2 / clearOfDayWm2[day]!, from, to, CLOUD_FIT.brightest, out);
  }
}

/**
 * Brings the indices of a day to the day's own by moving each towards 0 or towards the brightest in proportion to its
 * distance, so that none leaves the range. A day brighter than any hour may be says that the cloudless sky is too dull, and
 * gets it evenly.
 * @param clearWm2 a cloudless sky's light, the weights
 * @param wanted the day's index, 0 or more
 * @memberLoop
 */
export function holdDayTotal(
  clearWm2: Float64Array,
  from: number,
  to: number,
  wanted: number,
  brightest: number,
  index: Float64Array,
): void {
  let light = 0;
  let clear = 0;
  for (let k = from; k < to; k++) {
    light += index[k]! * clearWm2[k]!;
    clear += clearWm2[k]!;
  }
  if (clear > 0) bringTo(wanted, light / clear, from, to, brightest, index);
}

/** @memberLoop */
function bringTo(wanted: number, mean: number, from: number, to: number, brightest: number, index: Float64Array): void {
  if (mean <= 0 || wanted >= brightest) {
    for (let k = from; k < to; k++) index[k] = wanted;
  } else if (wanted <= mean) {
    const factor = wanted / mean;
    for (let k = from; k < to; k++) index[k]! *= factor;
  } else {
    const factor = (brightest - wanted) / (brightest - mean);
    for (let k = from; k < to; k++) index[k] = brightest - (brightest - index[k]!) * factor;
  }
}
