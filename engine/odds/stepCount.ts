import type { Prepared } from "../run/prepare.ts";
import {
  ROW_DEMAND_W,
  ROW_SLOTS,
  ROW_SOLAR_W,
  ROW_SPILLED_W,
  ROW_STORED_AH,
  ROW_UNSERVED_W,
  type RunRows,
} from "../run/runRows.ts";
import { DROPOUT_H, STATE_SLOTS, STORED_AH } from "../run/stepState.ts";
import { CHARGE_BINS, type OddsPart, POWER_BINS } from "./oddsPart.ts";

/** Smallest shortfall that counts: below it, it is rounding. */
export const NOTHING_W = 1e-6;

/** How the counting is to be done; one for an ensemble. */
export interface Counting {
  readonly reserveAh: number;
  readonly perFullAh: number;
  readonly solarBinsPerW: number;
  readonly loadBinsPerW: number;
  /** Devices in the order in which they go without; the rest follow as they stand. */
  readonly sheddingOrder: Int32Array;
}

/** Counts the finished member of a lane into a part. */
export function stepCount(
  prepared: Prepared,
  run: RunRows,
  lane: number,
  member: number,
  counting: Counting,
  part: OddsPart,
): void {
  const { rows } = run;
  const { steps, stepH } = prepared.grid;
  const { reserveAh, perFullAh } = counting;
  const { outcomes, chargeCounts, solarCounts, loadCounts, belowCounts, darkCounts } = part;
  const chargeBinsPerAh = perFullAh * CHARGE_BINS;
  const { solarBinsPerW, loadBinsPerW } = counting;
  const m = member - part.from;
  const now = lane * STATE_SLOTS;
  const firstRow = lane * steps * ROW_SLOTS;
  let lowestAh = rows[firstRow + ROW_STORED_AH]!;
  let lowestStep = 0;
  let belowFrom = -1;
  let below = 0;
  let darkFrom = -1;
  let dark = 0;
  let unservedW = 0;
  let solarW = 0;
  let spilledW = 0;
  let demandW = 0;
  for (let i = 0, row = firstRow; i < steps; i++, row += ROW_SLOTS) {
    const storedAh = rows[row + ROW_STORED_AH]!;
    const sunW = rows[row + ROW_SOLAR_W]!;
    const wantedW = rows[row + ROW_DEMAND_W]!;
    const shortW = rows[row + ROW_UNSERVED_W]!;
    if (storedAh < lowestAh) {
      lowestAh = storedAh;
      lowestStep = i;
    }
    if (storedAh < reserveAh) {
      if (belowFrom < 0) belowFrom = i;
      below++;
      belowCounts[i]!++;
    }
    if (shortW > NOTHING_W) {
      if (darkFrom < 0) darkFrom = i;
      dark++;
      unservedW += shortW;
      darkCounts[i]!++;
      countUnserved(prepared, i, shortW, counting, part);
    }
    solarW += sunW;
    spilledW += rows[row + ROW_SPILLED_W]!;
    demandW += wantedW;
    chargeCounts[i * CHARGE_BINS + binOf(storedAh * chargeBinsPerAh, CHARGE_BINS)]!++;
    solarCounts[i * POWER_BINS + binOf(sunW * solarBinsPerW, POWER_BINS)]!++;
    loadCounts[i * POWER_BINS + binOf(wantedW * loadBinsPerW, POWER_BINS)]!++;
  }
  const endAh = run.state[now + STORED_AH]!;
  chargeCounts[steps * CHARGE_BINS + binOf(endAh * chargeBinsPerAh, CHARGE_BINS)]!++;
  if (endAh < lowestAh) {
    lowestAh = endAh;
    lowestStep = steps;
  }
  if (endAh < reserveAh && belowFrom < 0) belowFrom = steps;
  outcomes.lowestShare[m] = lowestAh / prepared.bank.fullAh;
  outcomes.lowestStep[m] = lowestStep;
  outcomes.belowFromStep[m] = belowFrom;
  outcomes.belowSteps[m] = below;
  outcomes.darkFromStep[m] = darkFrom;
  outcomes.darkSteps[m] = dark;
  outcomes.unservedWh[m] = unservedW * stepH;
  outcomes.endShare[m] = endAh / prepared.bank.fullAh;
  outcomes.solarWh[m] = solarW * stepH;
  outcomes.spilledWh[m] = spilledW * stepH;
  outcomes.demandWh[m] = demandW * stepH;
  countSources(prepared, run, lane, m, part);
  outcomes.dropoutH[m] = run.state[now + DROPOUT_H]!;
}

/**
 * The bin that a place of 0 or more lies in. Cut off as a whole number, since comparing numbers with a point takes longer than all the
 * rest of the counting.
 * @memberLoop
 */
function binOf(place: number, bins: number): number {
  const bin = place | 0;
  return bin < bins ? bin : bins - 1;
}

/** Books a shortfall on the devices that go without first. */
function countUnserved(prepared: Prepared, i: number, shortW: number, counting: Counting, part: OddsPart): void {
  const { devices } = prepared.loads;
  const { stepH } = prepared.grid;
  let left = shortW * prepared.converterShare;
  for (let k = 0; k < counting.sheddingOrder.length && left > NOTHING_W; k++) {
    const d = counting.sheddingOrder[k]!;
    const takenW = Math.min(left, devices[d]!.alwaysW[i]! + devices[d]!.usedW[i]!);
    part.unservedMilliWh[d]! += Math.floor(takenW * stepH * 1000 + 0.5);
    left -= takenW;
  }
}

function countSources(prepared: Prepared, run: RunRows, lane: number, m: number, part: OddsPart): void {
  const { sources, grid } = prepared;
  let fuelL = 0;
  let runningH = 0;
  for (let s = 0; s < sources.length; s++) {
    if (!sources[s]!.isGenerator) continue;
    for (let i = 0; i < grid.steps; i++) {
      const burntL = run.parts[(lane * grid.steps + i) * run.partStride + run.fuelAt + s]!;
      fuelL += burntL;
      if (burntL > 0) runningH += grid.stepH * sources[s]!.availableShare[i]!;
    }
  }
  part.outcomes.fuelL[m] = fuelL;
  part.outcomes.generatorH[m] = runningH;
}
