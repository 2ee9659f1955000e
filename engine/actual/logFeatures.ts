import { acceptA } from "../bank/bankVoltage.ts";
import type { Prepared } from "../run/prepare.ts";
import { solved } from "./linearRule.ts";
import { METER_CHARGE_SHARE, METER_GAIN_SHARE, type MeterSeries } from "./meterSeries.ts";
import type { ChargeLimits, PlannedRows } from "./plannedRows.ts";

/** What a log says about a plan, condensed to a few numbers; NaN where it says nothing. */
export type LogFeatures = Float64Array;

/** Places in the features, and which of them speak of what. */
export const FEATURE_IDLE = 0;
export const FEATURE_SENDING = 1;
export const FEATURE_CAPACITY = 2;
export const FEATURE_START = 3;
/** Sun over plan: sum, and upper quantiles of the steps, in the open and under the crowns; then the two held together. */
export const FEATURE_OPEN = 4;
export const FEATURE_SHADED = 8;
export const FEATURE_CROWN = 12;
/** How fast the charge falls by night, over plan. */
export const FEATURE_NIGHT = 13;
/** Sending over plan once more, by least squares alone: it leans on steps in which little sun blurs what is derived. */
export const FEATURE_SENDING_FIT = 14;
export const FEATURES = 15;

/** Weakest belief that keeps a least-squares figure near 1 where the log hardly speaks, as a standard deviation. */
const WEAK_PRIOR = 1;
/** Hours with less than this of the plan's best tell more of the meter's zero than of the panels. */
const LEAST_SUN_SHARE = 0.02;
/** Hours with less than this of the event's highest cloudless sun: five minutes of a clock change their sun by a tenth. */
const LEAST_SKY_SHARE = 0.3;
/** Below and above these shares of change per spread of canopy a step counts as open, or as shaded. */
const OPEN_BELOW = 0.03;
const SHADED_FROM = 0.05;
/** Sums over fewer steps than these say nothing. */
const FEWEST_STEPS = 6;
const FEWEST_HOURS = 4;
/** Ratios below this are the meter's zero. */
const LEAST_RATIO = 0.01;

/**
 * Condenses a log, or what a meter would say of a member, to what speaks of draws, sending, capacity, sun and shade:
 * least-squares figures over the plan's rows, and quantiles of the sun over the plan's. The same code reads both, so
 * whatever a feature gets wrong it gets wrong alike.
 * @param block steps that are read together, for logs with rows farther apart than steps
 */
export function logFeatures(prepared: Prepared, planned: PlannedRows, series: MeterSeries, block: number): LogFeatures {
  const features = new Float64Array(FEATURES).fill(Number.NaN);
  if (series.loadW !== null) {
    const sunW = blocks(series.pvW ?? planned.sunW, block);
    loadFeatures(prepared, planned, blocks(series.loadW, block), sunW, block, features);
  }
  chargeFeatures(prepared, planned, series, features);
  if (series.pvW !== null) sunFeatures(prepared, planned, series, block, features);
  return features;
}

/** Means over blocks of steps; NaN where a step of a block is missing. */
function blocks(values: Float64Array, block: number): Float64Array {
  if (block === 1) return values;
  return Float64Array.from({ length: Math.floor(values.length / block) }, (_, b) => {
    let sum = 0;
    for (let i = b * block; i < (b + 1) * block; i++) sum += values[i]!;
    return sum / block;
  });
}

/** Idle draw and sending over plan, by weighted least squares: steps without sending settle the first, sums the second. */
function loadFeatures(
  prepared: Prepared,
  planned: PlannedRows,
  loadW: Float64Array,
  sun: Float64Array,
  block: number,
  features: Float64Array,
): void {
  const quiet = blocks(planned.quietW, block);
  const sending = blocks(planned.sendingW, block);
  const hourly = prepared.scenario.operators.byHourShare;
  const matrix = [new Float64Array(2), new Float64Array(2)];
  const right = new Float64Array(2);
  let [sumLoad, sumQuiet, sumSending, n] = [0, 0, 0, 0];
  for (let b = 0; b < loadW.length; b++) {
    const load = loadW[b]!;
    const [q, s] = [quiet[b]!, sending[b]!];
    // A load near nothing is a bank that was cut off, and says nothing of what was wanted.
    if (!Number.isFinite(load) || load < 0.1 * q) continue;
    const sunW = Number.isFinite(sun[b]!) ? sun[b]! : 0;
    const variance = 0.25 + (0.02 * (q + s)) ** 2 + ((0.3 + hourly) * s) ** 2 + (METER_GAIN_SHARE * sunW) ** 2;
    matrix[0]![0]! += (q * q) / variance;
    matrix[0]![1]! += (q * s) / variance;
    matrix[1]![1]! += (s * s) / variance;
    right[0]! += (q * (load - q - s)) / variance;
    right[1]! += (s * (load - q - s)) / variance;
    sumLoad += load;
    sumQuiet += q;
    sumSending += s;
    n++;
  }
  if (n < FEWEST_STEPS || sumQuiet <= 0) return;
  matrix[1]![0] = matrix[0]![1]!;
  for (const k of [0, 1]) matrix[k]![k]! += 1 / WEAK_PRIOR ** 2;
  const [idle, sent] = solved(matrix, right) as unknown as [number, number];
  features[FEATURE_IDLE] = 1 + idle;
  if (sumSending > 0.005 * sumQuiet) {
    features[FEATURE_SENDING] = (sumLoad - features[FEATURE_IDLE]! * sumQuiet) / sumSending;
    features[FEATURE_SENDING_FIT] = 1 + sent;
  }
}

/** Charge that the bank shows for each planned ampere-hour; the first charge; the fall by night. */
function chargeFeatures(prepared: Prepared, planned: PlannedRows, series: MeterSeries, features: Float64Array): void {
  const charge = series.chargeShare;
  if (charge === null) return;
  const first = charge.findIndex(Number.isFinite);
  if (first < 0) return;
  features[FEATURE_START] = charge[first]!;
  const { grid, bank, clear } = prepared;
  if (series.bankA !== null) {
    // Within each unbroken stretch the charge follows the ampere-hours that went in; each has a level of its own.
    let [sxx, sxy] = [0, 0];
    for (let from = 0; from < grid.steps; ) {
      let to = from;
      const counted: number[] = [0];
      while (to < grid.steps && Number.isFinite(series.bankA[to]!) && Number.isFinite(charge[to + 1]!)) {
        const amperes = series.bankA[to]!;
        const kept = amperes > 0 ? bank.coulombicShare : 1;
        counted.push(counted.at(-1)! + (amperes * kept * grid.stepH) / bank.fullAh);
        to++;
      }
      if (to > from && Number.isFinite(charge[from]!)) {
        const n = counted.length;
        const meanX = counted.reduce((sum, x) => sum + x, 0) / n;
        const meanY = counted.reduce((sum, _, k) => sum + charge[from + k]!, 0) / n;
        for (let k = 0; k < n; k++) {
          sxx += (counted[k]! - meanX) ** 2;
          sxy += (counted[k]! - meanX) * (charge[from + k]! - meanY - (counted[k]! - meanX));
        }
      }
      from = to + 1;
    }
    const excess = sxy / (sxx + METER_CHARGE_SHARE ** 2 / WEAK_PRIOR ** 2);
    features[FEATURE_CAPACITY] = 1 / Math.max(0.3, 1 + excess);
  } else {
    let [fell, planFell] = [0, 0];
    for (let i = 0; i < grid.steps; i++) {
      if (clear.ghiWm2[i]! > 0) continue;
      const change = charge[i]! - charge[i + 1]!;
      if (!Number.isFinite(change)) continue;
      fell += change;
      planFell +=
        ((planned.quietW[i]! + planned.sendingW[i]!) * grid.stepH) / (prepared.scenario.bank.nominalV * bank.fullAh);
    }
    if (planFell > 0.02) features[FEATURE_NIGHT] = fell / planFell;
  }
}

/** Whether the bank had room for more than it got, so that the panels' watts are what they could give. */
export function hadRoom(prepared: Prepared, planned: ChargeLimits, series: MeterSeries, i: number): boolean {
  const { bank } = prepared;
  const charge = series.chargeShare?.[i] ?? Number.NaN;
  const volts = series.bankV?.[i] ?? Number.NaN;
  if (Number.isFinite(charge)) {
    const amperes = series.bankA?.[i] ?? Number.NaN;
    const mostA = Math.min(planned.maxChargeA[i]!, acceptA(bank, Math.min(1, charge) * bank.fullAh));
    return charge < 0.97 && (Number.isFinite(amperes) ? amperes < 0.8 * mostA : charge < 0.85);
  }
  return !Number.isFinite(volts) || volts < 0.98 * bank.absorptionV;
}

/**
 * Sun over plan where the bank had room: in the open it tells of sky and yield, under crowns of the shade besides. Hour by hour, since drawn
 * cloud is fitted to records of hours and says nothing of how clouds pass within one.
 */
function sunFeatures(
  prepared: Prepared,
  planned: PlannedRows,
  series: MeterSeries,
  block: number,
  features: Float64Array,
): void {
  const { grid } = prepared;
  const per = Math.max(block, Math.round(1 / grid.stepH));
  const hours = Math.floor(grid.steps / per);
  const pvW = new Float64Array(hours).fill(Number.NaN);
  const sunW = new Float64Array(hours);
  const canopy = new Float64Array(hours);
  const skyWm2 = new Float64Array(hours);
  for (let b = 0; b < hours; b++) {
    let [got, plan, moved, above, n] = [0, 0, 0, 0, 0];
    for (let i = b * per; i < (b + 1) * per; i++) {
      if (!Number.isFinite(series.pvW![i]!) || !hadRoom(prepared, planned, series, i)) continue;
      got += series.pvW![i]!;
      plan += planned.sunW[i]!;
      moved += planned.sunW[i]! * planned.canopyShare[i]!;
      above += prepared.clear.ghiWm2[i]!;
      n++;
    }
    if (n < per / 2) continue;
    pvW[b] = got / n;
    sunW[b] = plan / n;
    skyWm2[b] = above / n;
    canopy[b] = plan > 0 ? moved / plan : 0;
  }
  const dayOf = (b: number) => grid.localDay[b * per]!;
  const highest = (values: Float64Array) => values.reduce((most, value) => Math.max(most, value), 0);
  const leastW = LEAST_SUN_SHARE * highest(planned.sunW);
  const leastWm2 = LEAST_SKY_SHARE * highest(prepared.clear.ghiWm2);
  const sides = [
    { at: FEATURE_OPEN, is: (share: number) => share < OPEN_BELOW },
    { at: FEATURE_SHADED, is: (share: number) => share >= SHADED_FROM },
  ];
  const days = grid.dates.length;
  const sums = sides.map(() => ({ got: new Float64Array(days), plan: new Float64Array(days) }));
  sides.forEach(({ at, is }, side) => {
    const ratios: number[] = [];
    let [got, plan] = [0, 0];
    for (let b = 0; b < pvW.length; b++) {
      if (!Number.isFinite(pvW[b]!) || sunW[b]! <= leastW || skyWm2[b]! < leastWm2 || !is(canopy[b]!)) continue;
      ratios.push(pvW[b]! / sunW[b]!);
      got += pvW[b]!;
      plan += sunW[b]!;
      sums[side]!.got[dayOf(b)]! += pvW[b]!;
      sums[side]!.plan[dayOf(b)]! += sunW[b]!;
    }
    if (ratios.length < FEWEST_HOURS) return;
    ratios.sort((a, b) => a - b);
    const quantile = (share: number) => ratios[Math.min(ratios.length - 1, Math.floor(share * ratios.length))]!;
    [got / plan, quantile(0.5), quantile(0.8), quantile(0.95)].forEach((ratio, k) => {
      features[at + k] = Math.log(Math.max(LEAST_RATIO, ratio));
    });
  });
  // Day by day the sky over both is much the same, so their quotient speaks of the crowns.
  let [weight, sum] = [0, 0];
  for (let day = 0; day < days; day++) {
    const [open, shaded] = sums.map(({ got, plan }) =>
      plan[day]! > 0 ? Math.max(LEAST_RATIO, got[day]! / plan[day]!) : Number.NaN,
    ) as [number, number];
    if (!Number.isFinite(open) || !Number.isFinite(shaded)) continue;
    const share = Math.min(sums[0]!.plan[day]!, sums[1]!.plan[day]!) * open;
    weight += share;
    sum += share * Math.log(shaded / open);
  }
  if (weight > 0) features[FEATURE_CROWN] = sum / weight;
}
