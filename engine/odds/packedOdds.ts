import {
  CHARGE_BINS,
  emptyCounts,
  joinedOutcomes,
  type LongCounts,
  type OddsPart,
  POWER_BINS,
  requireOneEnsemble,
} from "./oddsPart.ts";

/** Counts row by row, of each row only what lies between its first and its last member: where that begins, how much it is, then the counts. */
export type PackedCounts = Uint16Array | Uint32Array;

/**
 * A part as it is sent between threads. Of the bins of a step most are empty: packed, a part is a tenth as long, and what is long takes long to
 * send, since fresh memory has to be found for it on either side.
 */
export interface PackedOdds extends Omit<OddsPart, "chargeCounts" | "solarCounts" | "loadCounts"> {
  readonly charge: PackedCounts;
  readonly solar: PackedCounts;
  readonly load: PackedCounts;
}

const ROW_HEAD = 2;
/** The largest count that fits into two bytes. */
const SHORT_MEMBERS = 65_535;

export function packOdds({ chargeCounts, solarCounts, loadCounts, ...part }: OddsPart): PackedOdds {
  const members = part.to - part.from;
  return {
    ...part,
    charge: packedCounts(chargeCounts, CHARGE_BINS, members),
    solar: packedCounts(solarCounts, POWER_BINS, members),
    load: packedCounts(loadCounts, POWER_BINS, members),
  };
}

/**
 * Puts packed parts of one ensemble together, as `mergeOdds` does.
 * @param before the part that they follow, which grows in its own memory and is not to be used afterwards
 * @param counts memory for the counts where there is no part before, whatever stands in it: fresh memory of that length takes longer than the rest
 * @throws RangeError if the parts do not follow one another or are not of one ensemble
 */
export function mergePackedOdds(
  parts: readonly PackedOdds[],
  before: OddsPart | null = null,
  counts: LongCounts | null = null,
): OddsPart {
  const sorted = requireOneEnsemble<PackedOdds | OddsPart>(before === null ? parts : [before, ...parts]);
  const first = sorted[0]!;
  const { steps } = first;
  const sum = before ?? {
    ...emptyCounts(steps, counts),
    belowCounts: new Uint32Array(steps),
    darkCounts: new Uint32Array(steps),
    unservedMilliWh: new Float64Array(first.unservedMilliWh.length),
  };
  for (const part of parts) {
    addPacked(sum.chargeCounts, part.charge, CHARGE_BINS);
    addPacked(sum.solarCounts, part.solar, POWER_BINS);
    addPacked(sum.loadCounts, part.load, POWER_BINS);
    for (let i = 0; i < steps; i++) {
      sum.belowCounts[i]! += part.belowCounts[i]!;
      sum.darkCounts[i]! += part.darkCounts[i]!;
    }
    for (const [d, milliWh] of part.unservedMilliWh.entries()) sum.unservedMilliWh[d]! += milliWh;
  }
  return {
    seed: first.seed,
    from: first.from,
    to: sorted.at(-1)!.to,
    steps,
    outcomes: joinedOutcomes(sorted),
    chargeCounts: sum.chargeCounts,
    solarCounts: sum.solarCounts,
    loadCounts: sum.loadCounts,
    belowCounts: sum.belowCounts,
    darkCounts: sum.darkCounts,
    unservedMilliWh: sum.unservedMilliWh,
  };
}

function packedCounts(counts: Uint32Array, bins: number, members: number): PackedCounts {
  const rows = counts.length / bins;
  const first = new Uint16Array(rows);
  const taken = new Uint16Array(rows);
  let length = rows * ROW_HEAD;
  for (let row = 0; row < rows; row++) {
    const start = row * bins;
    let low = 0;
    while (low < bins && counts[start + low] === 0) low++;
    let end = bins;
    while (end > low && counts[start + end - 1] === 0) end--;
    first[row] = low;
    taken[row] = end - low;
    length += end - low;
  }
  const packed = members <= SHORT_MEMBERS ? new Uint16Array(length) : new Uint32Array(length);
  let at = 0;
  for (let row = 0; row < rows; row++) {
    const start = row * bins + first[row]!;
    const count = taken[row]!;
    packed[at] = first[row]!;
    packed[at + 1] = count;
    at += ROW_HEAD;
    for (let k = 0; k < count; k++) packed[at + k] = counts[start + k]!;
    at += count;
  }
  return packed;
}

function addPacked(sum: Uint32Array, packed: PackedCounts, bins: number): void {
  let at = 0;
  for (let start = 0; start < sum.length; start += bins) {
    const first = start + packed[at]!;
    const count = packed[at + 1]!;
    at += ROW_HEAD;
    for (let k = 0; k < count; k++) sum[first + k]! += packed[at + k]!;
    at += count;
  }
}
