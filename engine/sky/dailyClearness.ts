import { normalQuantile } from "../chance/normalQuantile.ts";
import { nextNormal } from "../chance/stream.ts";
import { toGrid } from "../grid.ts";
import { requireRange } from "../require.ts";
import { LARGEST_KT } from "./dayClearIndex.ts";
import { boundedShape, boundedValue, fillTable, NORMAL_SUM, readTable, TABLE_NODES } from "./johnsonSb.ts";
import { normalShare } from "./normalShare.ts";
import { LEAST_REACH_SD, usualClearness } from "./usualClearness.ts";

/** What the generator needs of a climate: `SiteClimate` has it. Twelve values each, January first. */
export interface MonthlyClearness {
  /** Mean of daily clearness Kt. */
  readonly kt: readonly number[];
  /** Standard deviation of daily Kt within a month; what months differ from year to year is added here. */
  readonly sd: readonly number[];
  /** Correlation of a day's Kt with the day before's. */
  readonly r1: readonly number[];
}

/**
 * The generator's constants, fitted on eight long records (docs/fits/daily-clearness.md); none is of one place.
 * A day's weather is a standard normal value made of a season that lingers, a spell that lasts days, and the day's own.
 */
export const DAILY_FIT = {
  /** Share of variance that lingers for weeks: most of what months differ by from year to year. */
  lingeringShare: 0.035,
  /** Days in which that falls to 1/e. */
  lingeringDays: 40,
  /** A spell's correlation from day to day: `spellBase + spellPerR1 × r1`. */
  spellBase: 0.22,
  spellPerR1: 0.65,
  /** How much better fine weather lasts than dull weather: weight of the square in season and spell. */
  fineLastsLonger: 0.25,
  /** Darkest day's Kt. */
  lowest: 0.02,
  /** Brightest day's Kt: `highest + highestPerSd × sd`, and at least `mean + reachSd × sd`, but never more than the clean sky lets through. */
  highest: 0.72,
  highestPerSd: 0.34,
  reachSd: LEAST_REACH_SD,
} as const;

/** Days in the month whose mean's variance parts spread within months from spread in all. */
const MONTH_DAYS = 30;
/** The day's own share of the variance never vanishes. */
const LEAST_OWN_SHARE = 0.06;
const HERMITE_TERMS = 6;
/** The brightest day where the sun hardly rises: days need some room above the darkest. */
const LEAST_HIGH = DAILY_FIT.lowest + 0.03;

/** The days of an event, ready for `drawDailyClearness`; one value per day unless a comment says otherwise. */
export interface PreparedClearness {
  readonly days: number;
  /** Mean Kt and standard deviation over all years. */
  readonly meanKt: Float64Array;
  readonly sdKt: Float64Array;
  readonly lingering: number;
  readonly lingeringDrive: number;
  readonly spell: Float64Array;
  readonly spellDrive: Float64Array;
  /** Weights of season and spell within what persists, whose variance is 1. */
  readonly seasonWeight: Float64Array;
  readonly spellWeight: Float64Array;
  /** Weights of what persists and of the day's own. */
  readonly persistentWeight: Float64Array;
  readonly ownWeight: Float64Array;
  /** `TABLE_NODES` a day: from the weighted sum to a standard normal value, and from that to Kt. */
  readonly normalOfSum: Float64Array;
  readonly ktOfNormal: Float64Array;
}

/**
 * Prepares the daily generator.
 *
 * Chain: season and spell (two first-order autoregressions) are added to P; P is skewed, `P + c (P² − 1)`, because fine
 * spells last better than dull ones; the day's own noise is added; the sum is brought to a standard normal value, and
 * that to Kt by Johnson's bounded distribution with the month's mean and spread. The spell's share is solved for so that
 * the correlation of Kt itself, not of the normal value, is the month's r1.
 * @param climate kt 0…0.9, sd 0…0.3, r1 0…0.8
 * @param dates local dates of the days, "2026-10-08", consecutive
 * @param brightestKt the largest Kt believed of each day, from `dayLight`; left out, 0.9
 * @throws RangeError if a monthly value leaves its range
 */
export function prepareDailyClearness(
  climate: MonthlyClearness,
  dates: readonly string[],
  brightestKt?: Float64Array,
): PreparedClearness {
  for (let month = 0; month < 12; month++) {
    requireRange({ [`kt[${month}]`]: climate.kt[month]! }, 0, LARGEST_KT);
    requireRange({ [`sd[${month}]`]: climate.sd[month]! }, 0, 0.3);
    requireRange({ [`r1[${month}]`]: climate.r1[month]! }, 0, 0.8);
  }
  const touched = touchedMonths(dates);
  const memory = climate.kt.map((_, month) => (touched.has(month) ? memoryOf(climate, month) : null));
  const known = memory.find((found) => found !== null)!;
  const course = (part: (found: Memory) => number) =>
    monthlyStraight(
      memory.map((found) => part(found ?? known)),
      dates,
    );
  const spellShare = course((found) => found.spellShare);
  const spell = course((found) => found.spell).map(toGrid);
  const days = dates.length;
  const usual = usualClearness(climate, dates, brightestKt);
  const meanKt = usual.meanKt.map(toGrid);
  const within = usual.sdKt;
  const sdKt = new Float64Array(days);
  const prepared: PreparedClearness = {
    days,
    meanKt,
    sdKt,
    lingering: toGrid(LINGERING),
    lingeringDrive: toGrid(Math.sqrt(1 - LINGERING * LINGERING)),
    spell,
    spellDrive: spell.map((value) => toGrid(Math.sqrt(1 - value * value))),
    seasonWeight: new Float64Array(days),
    spellWeight: new Float64Array(days),
    persistentWeight: new Float64Array(days),
    ownWeight: new Float64Array(days),
    normalOfSum: new Float64Array(days * TABLE_NODES),
    ktOfNormal: new Float64Array(days * TABLE_NODES),
  };
  for (let day = 0; day < days; day++) {
    const share = spellShare[day]!;
    const persistent = DAILY_FIT.lingeringShare + share;
    sdKt[day] = toGrid(within[day]! * overallPerWithin(share, spell[day]!));
    prepared.seasonWeight[day] = toGrid(Math.sqrt(DAILY_FIT.lingeringShare / persistent));
    prepared.spellWeight[day] = toGrid(Math.sqrt(share / persistent));
    prepared.persistentWeight[day] = toGrid(Math.sqrt(persistent));
    prepared.ownWeight[day] = toGrid(Math.sqrt(1 - persistent));
    const shape = clearnessShape(meanKt[day]!, sdKt[day]!, brightestKt?.[day] || LARGEST_KT);
    fillTable(prepared.normalOfSum, day * TABLE_NODES, (sum) => normalOfSum(sum, persistent));
    fillTable(prepared.ktOfNormal, day * TABLE_NODES, (z) => boundedValue(shape, z));
  }
  return prepared;
}

const LINGERING = Math.exp(-1 / DAILY_FIT.lingeringDays);

/**
 * Daily clearness of a month by its mean and spread: Johnson's bounded distribution between fitted bounds. Against the
 * quantiles of 96 months of long records rms 0.014; a normal distribution has 0.037.
 */
function clearnessShape(meanKt: number, sdKt: number, brightestKt = LARGEST_KT) {
  const high = Math.max(DAILY_FIT.highest + DAILY_FIT.highestPerSd * sdKt, meanKt + DAILY_FIT.reachSd * sdKt);
  return boundedShape(meanKt, sdKt, DAILY_FIT.lowest, Math.max(LEAST_HIGH, Math.min(brightestKt, high)));
}

/** How a month's weather remembers: what share of the variance the spell has, and its correlation from day to day. */
interface Memory {
  readonly spellShare: number;
  readonly spell: number;
}

/** Finds the spell's share that gives the month's r1; where even the largest is too little, the spell lasts longer. */
function memoryOf(climate: MonthlyClearness, month: number): Memory {
  const r1 = climate.r1[month]!;
  const spell = DAILY_FIT.spellBase + DAILY_FIT.spellPerR1 * r1;
  const most = 1 - LEAST_OWN_SHARE - DAILY_FIT.lingeringShare;
  const mean = Math.max(0.04, climate.kt[month]!);
  const sdAll = Math.max(0.01, climate.sd[month]!) * overallPerWithin(0.5, spell);
  const shape = clearnessShape(mean, sdAll);
  const r1Of = (memory: Memory) => clearnessR1(memory, (z) => boundedValue(shape, z));
  if (r1Of({ spellShare: most, spell }) >= r1) {
    return { spellShare: halving(0.01, most, (spellShare) => r1Of({ spellShare, spell }) < r1), spell };
  }
  return { spellShare: most, spell: halving(spell, 0.98, (longer) => r1Of({ spellShare: most, spell: longer }) < r1) };
}

function halving(from: number, to: number, tooLow: (value: number) => boolean): number {
  let low = from;
  let high = to;
  for (let round = 0; round < 16; round++) {
    const middle = (low + high) / 2;
    if (tooLow(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * The correlation of Kt from one day to the next. The day's own noises are independent, so only the expected Kt given
 * what persists counts, and its covariance is a sum over Hermite polynomials of powers of the correlation.
 */
function clearnessR1(memory: Memory, ktOf: (z: number) => number): number {
  const persistent = DAILY_FIT.lingeringShare + memory.spellShare;
  const own = Math.sqrt(1 - persistent);
  const { z, weight } = NORMAL_SUM;
  const table = new Float64Array(2 * TABLE_NODES);
  fillTable(table, 0, (sum) => normalOfSum(sum, persistent));
  fillTable(table, TABLE_NODES, ktOf);
  let mean = 0;
  let square = 0;
  for (let i = 0; i < z.length; i++) {
    const kt = ktOf(z[i]!);
    mean += weight[i]! * kt;
    square += weight[i]! * kt * kt;
  }
  const moment = new Float64Array(HERMITE_TERMS + 1);
  for (let i = 0; i < z.length; i += 2) {
    const centre = Math.sqrt(persistent) * skewed(z[i]!);
    let expected = 0;
    for (let k = 0; k < z.length; k += 2) {
      const sum = centre + own * z[k]!;
      expected += 2 * weight[k]! * readTable(table, TABLE_NODES, readTable(table, 0, sum));
    }
    let before = 0;
    let polynomial = 1;
    for (let n = 0; n <= HERMITE_TERMS; n++) {
      moment[n]! += 2 * weight[i]! * expected * polynomial;
      const next = z[i]! * polynomial - n * before;
      before = polynomial;
      polynomial = next;
    }
  }
  const correlation = (DAILY_FIT.lingeringShare * LINGERING + memory.spellShare * memory.spell) / persistent;
  let covariance = 0;
  let factorial = 1;
  let power = 1;
  for (let n = 1; n <= HERMITE_TERMS; n++) {
    factorial *= n;
    power *= correlation;
    covariance += (moment[n]! * moment[n]! * power) / factorial;
  }
  return covariance / (square - mean * mean);
}

/** What persists, skewed towards lasting fine weather, still with mean 0 and variance 1. */
function skewed(persistent: number): number {
  return (persistent + DAILY_FIT.fineLastsLonger * (persistent * persistent - 1)) * SKEW_SCALE;
}
const SKEW_SCALE = toGrid(1 / Math.sqrt(1 + 2 * DAILY_FIT.fineLastsLonger * DAILY_FIT.fineLastsLonger));
/** The points of `NORMAL_SUM`, skewed: `normalOfSum` is asked a thousand times for each month. */
const SKEWED_SUM = NORMAL_SUM.z.map(skewed);

/** Brings the weighted sum of what persists and the day's own to a standard normal value of the same rank. */
function normalOfSum(sum: number, persistent: number): number {
  const own = Math.sqrt(1 - persistent);
  const root = Math.sqrt(persistent);
  const { weight } = NORMAL_SUM;
  let share = 0;
  for (let i = 0; i < weight.length; i++) share += weight[i]! * normalShare((sum - root * SKEWED_SUM[i]!) / own);
  return normalQuantile(Math.max(1e-6, Math.min(1 - 1e-6, share)));
}

/**
 * Standard deviation over all years per standard deviation within single months (the sample's, divided by n − 1): what the
 * mean of a month takes of the variance is missing in the latter. 1.02 where r1 is 0.1, 1.06 where it is 0.5.
 */
function overallPerWithin(spellShare: number, spell: number): number {
  let sum = 1;
  for (let lag = 1; lag < MONTH_DAYS; lag++) {
    const correlation = DAILY_FIT.lingeringShare * LINGERING ** lag + spellShare * spell ** lag;
    sum += 2 * (1 - lag / MONTH_DAYS) * correlation;
  }
  return Math.sqrt((1 - 1 / MONTH_DAYS) / (1 - sum / MONTH_DAYS));
}

/**
 * The correlation of the normal values of two days.
 * @param lag days between them
 */
export function normalCorrelation(prepared: PreparedClearness, day: number, other: number): number {
  if (day === other) return 1;
  const lag = Math.abs(day - other);
  const spell = 0.5 * (prepared.spell[day]! + prepared.spell[other]!);
  const persistent =
    prepared.seasonWeight[day]! * prepared.seasonWeight[other]! * prepared.lingering ** lag +
    prepared.spellWeight[day]! * prepared.spellWeight[other]! * spell ** lag;
  const square = DAILY_FIT.fineLastsLonger * DAILY_FIT.fineLastsLonger;
  const skew = (persistent + 2 * square * persistent * persistent) / (1 + 2 * square);
  return prepared.persistentWeight[day]! * prepared.persistentWeight[other]! * skew;
}

/** Months that a straight course between their middles needs for the given days. */
function touchedMonths(dates: readonly string[]): Set<number> {
  const touched = new Set<number>();
  for (const date of dates) {
    const month = Number(date.slice(5, 7)) - 1;
    for (const near of [month + 11, month, month + 1]) touched.add(near % 12);
  }
  return touched;
}

/** As `monthlyCourse` but through the monthly values themselves, for shares that must not leave their range. */
function monthlyStraight(monthly: readonly number[], dates: readonly string[]): Float64Array {
  return Float64Array.from(dates, (date) => {
    const month = Number(date.slice(5, 7)) - 1;
    const place = month + (Number(date.slice(8, 10)) - 15.5) / 30.5;
    const left = Math.floor(place);
    const share = place - left;
    return (1 - share) * monthly[(left + 12) % 12]! + share * monthly[(left + 1) % 12]!;
  });
}

/**
 * Draws the normal value of each day of one member; three draws a day.
 * @param state the member's stream of purpose `sky`
 * @param out one value per day
 * @memberLoop
 */
export function drawDailyNormals(prepared: PreparedClearness, state: Uint32Array, out: Float64Array): void {
  let season = nextNormal(state);
  let spell = nextNormal(state);
  for (let day = 0; day < prepared.days; day++) {
    if (day > 0) {
      season = prepared.lingering * season + prepared.lingeringDrive * nextNormal(state);
      spell = prepared.spell[day]! * spell + prepared.spellDrive[day]! * nextNormal(state);
    }
    const persistent = prepared.seasonWeight[day]! * season + prepared.spellWeight[day]! * spell;
    const sum = prepared.persistentWeight[day]! * skewed(persistent) + prepared.ownWeight[day]! * nextNormal(state);
    out[day] = readTable(prepared.normalOfSum, day * TABLE_NODES, sum);
  }
}

/**
 * From normal values to daily clearness Kt.
 * @memberLoop
 */
export function clearnessOfNormals(prepared: PreparedClearness, normals: Float64Array, outKt: Float64Array): void {
  for (let day = 0; day < prepared.days; day++) {
    outKt[day] = readTable(prepared.ktOfNormal, day * TABLE_NODES, normals[day]!);
  }
}
