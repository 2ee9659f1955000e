import type { SizeWish } from "./sizeAxis.ts";
import type { SizeMap } from "./sizeMap.ts";
import type { SizePart } from "./sizeMembers.ts";
import { sizeSentences } from "./sizeSentences.ts";
import { type SizeAims, type SizeTally, sizeTally } from "./sizeTally.ts";
import { solvedTally } from "./solvedTally.ts";

/** What a map says, in figures and in sentences, the answer first. */
export interface SizeReport extends SizeTally {
  readonly sentences: readonly string[];
}

/**
 * Adds a map up.
 * @param part all its members, merged
 * @throws RangeError if the target or the days leave their range, or the part is of another map
 */
export function sizeReport(map: SizeMap, part: SizePart, aims: SizeAims): SizeReport {
  return saidOf(map, sizeTally(map, part, aims));
}

/** How a map is run: what a worker sends back and the map it is of. @throws what the caller's pool throws */
export type RunMap = (x: SizeWish, y: SizeWish | null) => Promise<{ readonly map: SizeMap; readonly part: SizePart }>;

/**
 * Runs a map, looks between its cells for the least sizes that meet the target, and adds it all up.
 * @param early is handed the map before anything is looked for between its cells
 */
export async function solvedSizes(
  x: SizeWish,
  y: SizeWish | null,
  aims: SizeAims,
  run: RunMap,
  early: (map: SizeMap, report: SizeReport) => void = () => {},
): Promise<{ readonly map: SizeMap; readonly report: SizeReport }> {
  const { map, part } = await run(x, y);
  const tally = sizeTally(map, part, aims);
  early(map, saidOf(map, tally));
  const solved = await solvedTally(tally, map.base.scenario, async (across, down) => {
    const inner = await run(across, down);
    return sizeTally(inner.map, inner.part, aims);
  });
  return { map, report: saidOf(map, solved) };
}

const saidOf = (map: SizeMap, tally: SizeTally): SizeReport => ({ ...tally, sentences: sizeSentences(tally, map) });
