import type { Branch } from "./branch.ts";
import type { LimitContext } from "./limitContext.ts";
import { askedOf } from "./putRight.ts";
import { cableDropV, sizeInWords, smallestSize } from "./wireSizes.ts";

/** One run of cable, out and back, and what it loses. */
export interface CableRun {
  readonly id: string;
  readonly about: string;
  /** "8 AWG" or "10 mm²". */
  readonly size: string;
  /** True where the scenario does not state it: then it is what would do, or what is usual. */
  readonly isAssumed: boolean;
  readonly oneWayM: number;
  /** Temperature of the copper, °C. */
  readonly tempC: number;
  /** Current at which the drop is taken: a radio's peak, the site's peak, the panels' rated current, A. */
  readonly currentA: number;
  readonly dropV: number;
  /** Of the volts that the run is made for: 12 V for loads, the string's or the bank's for panels. */
  readonly dropShare: number;
  /** Thinnest size that is sold which keeps to the target and carries the current; null if none does. */
  readonly smallest: string | null;
}

/** Every run of cable, those that are assumed too. */
export function cableRuns(branches: readonly Branch[], context: LimitContext): CableRun[] {
  return branches.flatMap((branch): CableRun[] => {
    const { cable, dropA } = branch;
    if (cable === null) return [];
    const dropV = cableDropV(cable, dropA);
    const smallest = smallestSize(cable, askedOf(branch, context));
    return [
      {
        id: branch.id,
        about: branch.about,
        size: sizeInWords(cable),
        isAssumed: branch.isCableAssumed,
        oneWayM: cable.oneWayM,
        tempC: cable.tempC,
        currentA: dropA,
        dropV,
        dropShare: dropV / branch.atV,
        smallest: smallest === null ? null : sizeInWords(smallest),
      },
    ];
  });
}
