import { type Odds, sampleRange, inHundred as shareInHundred } from "../odds/wilson.ts";

/** 0.927 as "93", and neither 0 nor 100 unless it is all or nothing. */
export function inHundred({ share }: { readonly share: number }): string {
  return shareInHundred(share);
}

/** "91–94": the interval that the sample leaves open, in 100. */
export function oddsRange(odds: Pick<Odds, "low" | "high">): string {
  return sampleRange(odds);
}

/** What it is that fails, where that is hardly the charge: fewer skies under the reserve than others in which something goes without. */
export function withoutWords({
  holds,
  goesWithout,
}: {
  readonly holds: Odds;
  readonly goesWithout: Odds;
}): string | null {
  if (goesWithout.share <= (1 - holds.share) / 2) return null;
  return `In ${inHundred(goesWithout)} of 100 the charge keeps its reserve and something goes without all the same: short of current or volts, or too cold.`;
}
