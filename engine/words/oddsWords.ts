import type { Odds } from "../odds/wilson.ts";

/** 0.927 as "93", and neither 0 nor 100 unless it is all or nothing. */
export function inHundred({ share }: { readonly share: number }): string {
  const rounded = Math.round(100 * share);
  if (rounded === 100 && share < 1) return "more than 99";
  if (rounded === 0 && share > 0) return "fewer than 1";
  return String(rounded);
}

/** "91–94": the interval that the sample leaves open, in 100. */
export function oddsRange({ low, high }: Pick<Odds, "low" | "high">): string {
  return `${Math.round(100 * low)}–${Math.round(100 * high)}`;
}

/**
 * How often loads go dark, where that is more often than the bank fails to hold: a bank may keep its reserve and still leave loads without
 * power, out of reach in the cold, or short of current or volts. Null where the odds of holding say it all.
 */
export function darkerThanSaid({ holds, dark }: { readonly holds: Odds; readonly dark: Odds }): string | null {
  return dark.share > 1 - holds.share ? inHundred(dark) : null;
}
