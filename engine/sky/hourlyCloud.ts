import { nextNormal } from "../chance/stream.ts";
import { toGrid } from "../grid.ts";
import { requireRange } from "../require.ts";
import { MAX_DAY_CLEAR_INDEX } from "./dayClearIndex.ts";
import { boundedShape, boundedValue, fillTable, readTable, TABLE_NODES } from "./johnsonSb.ts";

/**
 * Cloud from hour to hour, fitted on 122 measured days (docs/fits/hourly-cloud.md). Index: light on the level over a
 * cloudless sky's.
 */
export const CLOUD_FIT = {
  /** Hours in which the correlation of the index falls to 1/e. */
  memoryH: 2.5,
  /** Brightest hour: cloud edges add light to a cloudless sky's. */
  brightest: 1.12,
  /** Spread of hours within a day of index C: `spread × C^rise × (1.05 − C)^fall`, at least `least`. */
  spread: 1.2,
  rise: 1.5,
  fall: 1.05,
  least: 0.02,
  /** What bounds and holding the day's total leave of the spread that is drawn. */
  keptShare: 0.8,
} as const;

/** Where spread within the day ends: a day this bright is cloudless. */
const CLOUDLESS = 1.05;
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
  readonly memory: number;
  readonly drive: number;
  /** Sum of those of each day. */
  readonly clearOfDayWm2: Float64Array;
  /** The clear-sky index by normal value, one table for each 0.005 of the day's index: no day is further than half of that from one. */
  readonly indexTable: Float64Array;
}

/**
 * Prepares cloud for daylight steps of any length from minutes to hours. Below the hour the index wanders on smoothly
 * with the same memory; flicker within minutes is left out, because the harvest follows light nearly in proportion.
 * @param dayStart one more value than days, rising
 * @param clearWm2 one value per daylight step of whole days, above 0
 * @param stepH hours in a step, 0…3
 */
export function prepareHourlyCloud(dayStart: Int32Array, clearWm2: Float64Array, stepH: number): PreparedCloud {
  requireRange({ stepH }, 1 / 3600, 3);
  const memoryH = CLOUD_FIT.memoryH;
  const step = stepH / memoryH;
  // The lag-1 correlation of means over steps of a process that forgets exponentially.
  const memory = (1 - Math.exp(-step)) ** 2 / (2 * (step - 1 + Math.exp(-step)));
  const within = withinDayShare(dayStart, clearWm2, stepH, memory);
  const inflate = Math.sqrt(longStepShare(step, stepH) / within) / CLOUD_FIT.keptShare;
  const weights = clearWm2.map(toGrid);
  return {
    dayStart,
    clearWm2: weights,
    clearOfDayWm2: Float64Array.from({ length: Math.max(0, dayStart.length - 1) }, (_, day) =>
      weights.subarray(dayStart[day]!, dayStart[day + 1]!).reduce((sum, wm2) => sum + wm2, 0),
    ),
    memory: toGrid(memory),
    drive: toGrid(Math.sqrt(1 - memory * memory)),
    indexTable: indexTables(inflate),
  };
}

/** @param inflate what the hours' spread is to be multiplied by */
function indexTables(inflate: number): Float64Array {
  const tables = new Float64Array(DAY_TABLES * TABLE_NODES);
  for (let node = 0; node < DAY_NODES; node++) {
    const dayIndex = (node * TABLES_PER_NODE) / TABLES_PER_INDEX;
    const high = Math.max(CLOUD_FIT.brightest, dayIndex + 0.02);
    const shape = boundedShape(dayIndex, hourlySpread(dayIndex) * inflate, 0, high);
    fillTable(tables, node * TABLES_PER_NODE * TABLE_NODES, (z) => boundedValue(shape, z));
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
function longStepShare(step: number, stepH: number): number {
  return stepH <= 1 ? 1 : meanVariance(step) / meanVariance(1 / CLOUD_FIT.memoryH);
}

/**
 * What is left of the variance of steps when hours are formed of them and the mean of the day is taken out; of the
 * sunniest day, where the most is at stake.
 */
function withinDayShare(dayStart: Int32Array, clearWm2: Float64Array, stepH: number, memory: number): number {
  const perHour = Math.max(1, Math.round(1 / stepH));
  let hour = 0;
  for (let k = 0; k < perHour; k++) {
    for (let other = 0; other < perHour; other++) hour += memory ** Math.abs(k - other) / (perHour * perHour);
  }
  let sunniest = 0;
  let most = 0;
  for (let day = 0; day + 1 < dayStart.length; day++) {
    let total = 0;
    for (let k = dayStart[day]!; k < dayStart[day + 1]!; k++) total += clearWm2[k]!;
    if (total <= most) continue;
    most = total;
    sunniest = day;
  }
  if (most === 0) return hour;
  const from = dayStart[sunniest]!;
  const to = dayStart[sunniest + 1]!;
  let day = 0;
  for (let k = from; k < to; k++) {
    for (let other = from; other < to; other++) {
      day += (clearWm2[k]! * clearWm2[other]! * memory ** Math.abs(k - other)) / (most * most);
    }
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
  const { dayStart, clearWm2, clearOfDayWm2, indexTable, memory, drive } = cloud;
  for (let day = 0; day < clearOfDayWm2.length; day++) {
    const from = dayStart[day]!;
    const to = dayStart[day + 1]!;
    const place = dayIndex[day]! * TABLES_PER_INDEX + 0.5;
    const table = TABLE_NODES * (place < DAY_TABLES ? place | 0 : DAY_TABLES - 1);
    let z = 0;
    let lightWm2 = 0;
    for (let k = from; k < to; k++) {
      z = k === from ? nextNormal(state) : memory * z + drive * nextNormal(state);
      const index = readTable(indexTable, table, z);
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
