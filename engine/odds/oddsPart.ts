import type { Prepared } from "../run/prepare.ts";

/** Steps of the histograms from which bands are read: fine enough for a picture, coarse enough to keep and send. */
export const CHARGE_BINS = 256;
export const POWER_BINS = 64;

/** What became of each member, one value per member. Steps count from the start; -1 where it never happened. */
export interface MemberOutcomes {
  readonly lowestShare: Float64Array;
  readonly lowestStep: Float64Array;
  readonly belowFromStep: Float64Array;
  readonly belowSteps: Float64Array;
  readonly darkFromStep: Float64Array;
  readonly darkSteps: Float64Array;
  readonly unservedWh: Float64Array;
  readonly endShare: Float64Array;
  readonly fuelL: Float64Array;
  readonly generatorH: Float64Array;
  readonly solarWh: Float64Array;
  readonly spilledWh: Float64Array;
  readonly demandWh: Float64Array;
  /** Staffed hours in which some radio would fall below its least volts on a peak. */
  readonly dropoutH: Float64Array;
}

/**
 * Members `from` to `to` (not included) of an ensemble, added up so that parts merge exactly: outcomes are laid end to end, counts are whole numbers.
 */
export interface OddsPart {
  readonly seed: string;
  readonly from: number;
  readonly to: number;
  readonly steps: number;
  readonly outcomes: MemberOutcomes;
  /** Counts per step and bin: charge at each step's start and at the end (`steps + 1` rows), sun and load. */
  readonly chargeCounts: Uint32Array;
  readonly solarCounts: Uint32Array;
  readonly loadCounts: Uint32Array;
  /** Members below the reserve, and dark, in each step. */
  readonly belowCounts: Uint32Array;
  readonly darkCounts: Uint32Array;
  /** Unserved energy by device, thousandths of a watt-hour, in whole numbers so that sums do not depend on their order. */
  readonly unservedMilliWh: Float64Array;
}

/** Top of the power histograms, W: more than the panels or the gear can ever make of it. */
export function powerScale(prepared: Prepared): { readonly solarW: number; readonly loadW: number } {
  const ratedW = prepared.scenario.panels.reduce((sum, group) => sum + group.count * group.module.ratedW, 0);
  const sendingW = prepared.loads.stations.reduce((sum, station) => sum + station.sendingExtraW, 0);
  const mostQuietW = prepared.loads.quietW.reduce((most, watts) => Math.max(most, watts), 0);
  return {
    solarW: Math.max(1, 1.2 * ratedW),
    loadW: Math.max(1, (1.5 * mostQuietW + sendingW) / prepared.converterShare + prepared.controllersW),
  };
}

const OUTCOMES: readonly (keyof MemberOutcomes)[] = [
  "lowestShare",
  "lowestStep",
  "belowFromStep",
  "belowSteps",
  "darkFromStep",
  "darkSteps",
  "unservedWh",
  "endShare",
  "fuelL",
  "generatorH",
  "solarWh",
  "spilledWh",
  "demandWh",
  "dropoutH",
];

function outcomesFrom(column: (name: keyof MemberOutcomes) => Float64Array): MemberOutcomes {
  return Object.fromEntries(OUTCOMES.map((name) => [name, column(name)])) as unknown as MemberOutcomes;
}

/** The long arrays of a part. */
export type LongCounts = Pick<OddsPart, "chargeCounts" | "solarCounts" | "loadCounts">;

/**
 * Room for the counts of an event of so many steps, with nothing counted.
 * @param memory that is taken for it where it is as long, whatever stands in it; fresh memory of that length takes longer than some members do
 */
export function emptyCounts(steps: number, memory: LongCounts | null = null): LongCounts {
  if (memory !== null && memory.solarCounts.length === steps * POWER_BINS) {
    const { chargeCounts, solarCounts, loadCounts } = memory;
    for (const each of [chargeCounts, solarCounts, loadCounts]) each.fill(0);
    return { chargeCounts, solarCounts, loadCounts };
  }
  return {
    chargeCounts: new Uint32Array((steps + 1) * CHARGE_BINS),
    solarCounts: new Uint32Array(steps * POWER_BINS),
    loadCounts: new Uint32Array(steps * POWER_BINS),
  };
}

/**
 * Room for members `from` to `to`.
 * @param counts for as many steps, with nothing counted yet
 */
export function makeOddsPart(
  prepared: Prepared,
  seed: string,
  from: number,
  to: number,
  counts: LongCounts = emptyCounts(prepared.grid.steps),
): OddsPart {
  const { steps } = prepared.grid;
  return {
    seed,
    from,
    to,
    steps,
    outcomes: outcomesFrom(() => new Float64Array(to - from)),
    chargeCounts: counts.chargeCounts,
    solarCounts: counts.solarCounts,
    loadCounts: counts.loadCounts,
    belowCounts: new Uint32Array(steps),
    darkCounts: new Uint32Array(steps),
    unservedMilliWh: new Float64Array(prepared.loads.devices.length),
  };
}

type Joint = Pick<OddsPart, "seed" | "from" | "to" | "steps" | "outcomes" | "unservedMilliWh">;

/**
 * Parts in the order of their members.
 * @throws RangeError if they do not follow one another or are not of one ensemble
 */
export function requireOneEnsemble<Part extends Joint>(parts: readonly Part[]): Part[] {
  const sorted = [...parts].sort((a, b) => a.from - b.from);
  const first = sorted[0];
  if (first === undefined) throw new RangeError("parts must hold at least one part, got none");
  sorted.forEach((part, p) => {
    const before = sorted[p - 1];
    if (before !== undefined && before.to !== part.from) {
      throw new RangeError(`parts must follow one another, got members up to ${before.to} and then from ${part.from}`);
    }
    if (
      part.seed !== first.seed ||
      part.steps !== first.steps ||
      part.unservedMilliWh.length !== first.unservedMilliWh.length
    ) {
      throw new RangeError("parts must be of one scenario and one seed, got different ones");
    }
  });
  return sorted;
}

/** Outcomes of parts that follow one another, laid end to end. */
export function joinedOutcomes(sorted: readonly Joint[]): MemberOutcomes {
  const { from } = sorted[0]!;
  return outcomesFrom((name) => {
    const joined = new Float64Array(sorted.at(-1)!.to - from);
    for (const part of sorted) joined.set(part.outcomes[name], part.from - from);
    return joined;
  });
}

/**
 * Puts parts of one ensemble together: 0…500 and 500…1000 are 0…1000, to the last bit.
 * @throws RangeError if the parts do not follow one another or are not of one ensemble
 */
export function mergeOdds(parts: readonly OddsPart[]): OddsPart {
  const [first, ...rest] = requireOneEnsemble(parts) as [OddsPart, ...OddsPart[]];
  const sum = {
    chargeCounts: first.chargeCounts.slice(),
    solarCounts: first.solarCounts.slice(),
    loadCounts: first.loadCounts.slice(),
    belowCounts: first.belowCounts.slice(),
    darkCounts: first.darkCounts.slice(),
    unservedMilliWh: first.unservedMilliWh.slice(),
  };
  for (const part of rest) {
    addCounts(sum.chargeCounts, part.chargeCounts);
    addCounts(sum.solarCounts, part.solarCounts);
    addCounts(sum.loadCounts, part.loadCounts);
    addCounts(sum.belowCounts, part.belowCounts);
    addCounts(sum.darkCounts, part.darkCounts);
    for (const [d, milliWh] of part.unservedMilliWh.entries()) sum.unservedMilliWh[d]! += milliWh;
  }
  const { to } = rest.at(-1) ?? first;
  return { ...first, ...sum, to, outcomes: joinedOutcomes([first, ...rest]) };
}

/** By itself, so that it is compiled for whole numbers alone: there are half a million of them. */
function addCounts(sum: Uint32Array, more: Uint32Array): void {
  for (let k = 0; k < more.length; k++) sum[k]! += more[k]!;
}
