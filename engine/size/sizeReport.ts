import type { SizeMap } from "./sizeMap.ts";
import type { SizePart } from "./sizeMembers.ts";
import { sizeSentences } from "./sizeSentences.ts";
import { type SizeAims, type SizeTally, sizeTally } from "./sizeTally.ts";

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
  const tally = sizeTally(map, part, aims);
  return { ...tally, sentences: sizeSentences(tally, map) };
}
