/** A share with the interval that its sample leaves open. */
export interface Odds {
  readonly count: number;
  readonly of: number;
  readonly share: number;
  /** Interval that holds the true share in 95 of 100 samples. */
  readonly low: number;
  readonly high: number;
}

/** Two-sided 95 % point of the normal law. */
export const Z95 = 1.959963984540054;

/**
 * A share out of a sample, with its score interval.
 * @param count 0…of
 * @param of 1 or more
 * @see E. B. Wilson, Journal of the American Statistical Association 22 (1927) 209–212
 */
export function wilson(count: number, of: number): Odds {
  const share = count / of;
  const z2 = Z95 * Z95;
  const middle = (share + z2 / (2 * of)) / (1 + z2 / of);
  const half = (Z95 / (1 + z2 / of)) * Math.sqrt((share * (1 - share)) / of + z2 / (4 * of * of));
  return { count, of, share, low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}

/** A share as so many in a hundred; all and none are said only where it is so. */
export function inHundred(share: number): string {
  const rounded = Math.round(100 * share);
  if (rounded === 100 && share < 1) return "more than 99";
  if (rounded === 0 && share > 0) return "fewer than 1";
  return String(rounded);
}

/** "91–94": what the sample leaves open, in a hundred. */
export function sampleRange({ low, high }: Pick<Odds, "low" | "high">, between = "–"): string {
  const [from, to] = [Math.round(100 * low), Math.round(100 * high)];
  if (to === 0) return "under 1";
  if (from === 100) return "over 99";
  return from === to ? String(from) : `${from}${between}${to}`;
}
