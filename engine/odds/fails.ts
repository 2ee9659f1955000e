import type { OddsPart } from "./oddsPart.ts";

type Fates = Pick<OddsPart["outcomes"], "belowFromStep" | "darkFromStep">;

/**
 * The first step in which a member fails: its charge is under the reserve, or something planned goes without. −1 for one that holds. What
 * holds means everywhere: forecast, versus, sizes, drivers, readings.
 */
export function failsFromStep({ belowFromStep, darkFromStep }: Fates, m: number): number {
  const [below, dark] = [belowFromStep[m]!, darkFromStep[m]!];
  if (below < 0 || dark < 0) return Math.max(below, dark);
  return Math.min(below, dark);
}

/** Whether a member keeps its reserve, and something goes without all the same: short of current or volts, or too cold. */
export function goesWithout({ belowFromStep, darkFromStep }: Fates, m: number): boolean {
  return belowFromStep[m]! < 0 && darkFromStep[m]! >= 0;
}
