import { nextUnit } from "../chance/stream.ts";
import { Z95 } from "../odds/wilson.ts";
import { requireSameLength } from "../require.ts";

/** A number from a sample; the true one lies within `plusMinus` in 95 of 100 samples. */
export interface Sampled {
  readonly value: number;
  readonly plusMinus: number;
}

/** What one factor has to do with how an outcome differs from member to member; shares of its variance. */
export interface DriverShare {
  /** What would go if this factor alone were known. */
  readonly first: Sampled;
  /** What would stay if all but this factor were known: its own part and all that it does together with others. */
  readonly total: Sampled;
}

export interface DriversShares {
  readonly factors: readonly DriverShare[];
  /** Sum of the first-order shares; what is missing to 1 lies in factors acting together. */
  readonly firstSum: Sampled;
}

/** Times that the rows are drawn again to see how far the estimates scatter. */
const RESAMPLES = 200;

/**
 * Shares of an outcome's variance by factor. Row m of `a` and of `b` are two independent draws of all factors; row m of
 * `mixed[k]` is `a`'s with factor k taken from `b`. With the outcome's mean taken off first:
 *
 * - total share, Jansen: `mean((a − mixed)²) / (2 variance)`
 * - first-order share, Saltelli: `mean(b (mixed − a)) / variance`, which is sharp where the share is small, and Jansen:
 *   `1 − mean((b − mixed)²) / (2 variance)`, which is sharp where it is large; mixed so that the result scatters least.
 *
 * The scatter comes from drawing rows again (B. Efron, Annals of Statistics 7 (1979) 1–26). Small shares may come out below 0.
 * @param state an open stream, for the rows drawn again
 * @returns null if the outcome does not differ
 * @see A. Saltelli et al., Computer Physics Communications 181 (2010) 259–270, table 2;
 * M. J. W. Jansen, Computer Physics Communications 117 (1999) 35–43
 */
export function driversShares(
  a: Float64Array,
  b: Float64Array,
  mixed: readonly Float64Array[],
  state: Uint32Array,
): DriversShares | null {
  requireSameLength({ a, b, ...Object.fromEntries(mixed.map((rows, k) => [`mixed[${k}]`, rows])) });
  const rows = a.length;
  const middle = (sumOf(a) + sumOf(b)) / (2 * rows);
  // Estimates are sums over rows of these numbers, so rows drawn again only add them up again.
  const straight = a.map((value, m) => value - middle + (b[m]! - middle));
  const square = a.map((value, m) => (value - middle) ** 2 + (b[m]! - middle) ** 2);
  const product = mixed.map((mix) => mix.map((value, m) => (b[m]! - middle) * (value - a[m]!)));
  const otherGap = mixed.map((mix) => mix.map((value, m) => 0.5 * (b[m]! - value) ** 2));
  const ownGap = mixed.map((mix) => mix.map((value, m) => 0.5 * (a[m]! - value) ** 2));
  const estimate = (taken: (m: number) => number) => {
    const sum = (part: Float64Array) => {
      let total = 0;
      for (let m = 0; m < rows; m++) total += part[taken(m)]!;
      return total;
    };
    const mean = sum(straight) / (2 * rows);
    const variance = sum(square) / (2 * rows) - mean * mean;
    const perVariance = variance > LEAST_VARIANCE ? 1 / (rows * variance) : 0;
    return {
      variance,
      saltelli: product.map((part) => sum(part) * perVariance),
      jansen: otherGap.map((part) => 1 - sum(part) * perVariance),
      total: ownGap.map((part) => sum(part) * perVariance),
    };
  };
  const found = estimate((m) => m);
  if (found.variance <= LEAST_VARIANCE) return null;
  const drawn = new Int32Array(rows);
  const again = Array.from({ length: RESAMPLES }, () => {
    for (let m = 0; m < rows; m++) drawn[m] = Math.floor(nextUnit(state) * rows);
    return estimate((m) => drawn[m]!);
  });
  type Estimate = typeof found;
  const jansenWeight = mixed.map((_, k) =>
    weightOfSecond(
      again.map(({ saltelli }) => saltelli[k]!),
      again.map(({ jansen }) => jansen[k]!),
    ),
  );
  const first = ({ saltelli, jansen }: Estimate, k: number) =>
    saltelli[k]! + jansenWeight[k]! * (jansen[k]! - saltelli[k]!);
  const sampled = (of: (estimated: Estimate) => number): Sampled => ({
    value: of(found),
    plusMinus: Z95 * Math.sqrt(covariance(again.map(of), again.map(of))),
  });
  return {
    factors: mixed.map((_, k) => ({
      first: sampled((estimated) => first(estimated, k)),
      total: sampled((estimated) => estimated.total[k]!),
    })),
    firstSum: sampled((estimated) => mixed.reduce((sum, _, k) => sum + first(estimated, k), 0)),
  };
}

const LEAST_VARIANCE = 1e-18;

/** How much of a second estimate of the same number to take so that the mixture scatters least. */
function weightOfSecond(one: readonly number[], other: readonly number[]): number {
  const gap = other.map((value, r) => value - one[r]!);
  const spread = covariance(gap, gap);
  return spread > LEAST_VARIANCE ? Math.max(0, Math.min(1, -covariance(one, gap) / spread)) : 0;
}

function covariance(one: readonly number[], other: readonly number[]): number {
  const oneMean = sumOf(one) / one.length;
  const otherMean = sumOf(other) / other.length;
  return one.reduce((sum, value, r) => sum + (value - oneMean) * (other[r]! - otherMean), 0) / (one.length - 1);
}

function sumOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 0; k < values.length; k++) sum += values[k]!;
  return sum;
}

/** Mean of paired differences, with its interval. */
export function pairedMean(differences: Float64Array): Sampled {
  const mean = sumOf(differences) / differences.length;
  const square = sumOf(differences.map((value) => (value - mean) ** 2));
  return { value: mean, plusMinus: Z95 * Math.sqrt(square / Math.max(1, differences.length - 1) / differences.length) };
}
