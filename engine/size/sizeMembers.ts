import { countFates, type SizeCounts } from "./sizeFates.ts";
import type { SizeMap } from "./sizeMap.ts";

/** Members `from` to `to` (not included) of a map, counted in whole numbers so that parts merge exactly. Plain data. */
export interface SizePart extends SizeCounts {
  readonly seed: string;
  readonly from: number;
  readonly to: number;
}

const MOST_MEMBERS = 1_000_000;

/**
 * Runs members `from` to `to` (not included) through every cell: each sky and each operator is drawn once and met by all of them.
 * @param between called after each few members with how many are done; returning false stops, and the part holds those that are done
 * @throws RangeError if the members are not whole numbers in order
 */
export function sizeMembers(
  map: SizeMap,
  from: number,
  to: number,
  between: (done: number) => boolean = () => true,
): SizePart {
  if (!(Number.isInteger(from) && Number.isInteger(to) && from >= 0 && to > from && to <= MOST_MEMBERS)) {
    throw new RangeError(`members must be whole numbers with 0 <= from < to <= ${MOST_MEMBERS}, got ${from} and ${to}`);
  }
  const cells = map.cells.length;
  const counts: SizeCounts = {
    held: new Uint32Array(cells),
    dark: new Uint32Array(cells),
    goesWithout: new Uint32Array(cells),
  };
  let member = from;
  do {
    const count = Math.min(map.stretch.most, to - member);
    countFates(map, member, count, counts);
    member += count;
  } while (between(member - from) && member < to);
  return { seed: map.seed, from, to: member, ...counts };
}

/**
 * Puts parts of one map together, exactly.
 * @throws RangeError if the parts do not follow one another or are not of one map
 */
export function mergeSizes(parts: readonly SizePart[]): SizePart {
  const sorted = [...parts].sort((a, b) => a.from - b.from);
  const first = sorted[0];
  if (first === undefined) throw new RangeError("parts must hold at least one part, got none");
  const held = first.held.slice();
  const dark = first.dark.slice();
  const goesWithout = first.goesWithout.slice();
  sorted.slice(1).forEach((part, p) => {
    const before = sorted[p]!;
    if (before.to !== part.from) {
      throw new RangeError(`parts must follow one another, got members up to ${before.to} and then from ${part.from}`);
    }
    if (part.seed !== first.seed || part.held.length !== held.length) {
      throw new RangeError("parts must be of one map and one seed, got different ones");
    }
    for (let k = 0; k < held.length; k++) {
      held[k]! += part.held[k]!;
      dark[k]! += part.dark[k]!;
      goesWithout[k]! += part.goesWithout[k]!;
    }
  });
  return { seed: first.seed, from: first.from, to: sorted.at(-1)!.to, held, dark, goesWithout };
}
