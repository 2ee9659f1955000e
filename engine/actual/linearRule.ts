/** A straight-line rule from features to one value, fitted to members, and how far it missed each of them. */
export interface LinearRule {
  readonly value: number;
  /** Residuals of the members with weight, and their weights. */
  readonly misses: Float64Array;
  readonly weights: Float64Array;
}

/** Keeps features that say the same thing from dividing by nothing. */
const RIDGE = 1e-4;

/**
 * Fits `targets` by a weighted sum of features plus a constant, and asks the rule about one more row.
 * @param rows one row of features for each member, all of one length
 * @param asked the row that the rule is asked about
 */
export function linearRule(
  rows: readonly Float64Array[],
  targets: Float64Array,
  weights: Float64Array,
  asked: Float64Array,
): LinearRule {
  const width = asked.length;
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (of: (m: number) => number) => rows.reduce((sum, _, m) => sum + weights[m]! * of(m), 0) / total;
  const centre = Float64Array.from({ length: width }, (_, f) => mean((m) => rows[m]![f]!));
  const spread = Float64Array.from({ length: width }, (_, f) =>
    Math.max(1e-12, Math.sqrt(mean((m) => (rows[m]![f]! - centre[f]!) ** 2))),
  );
  const scaled = (row: Float64Array) => row.map((value, f) => (value - centre[f]!) / spread[f]!);
  const scaledRows = rows.map(scaled);
  const targetMean = mean((m) => targets[m]!);
  const matrix = Array.from({ length: width }, (_, f) =>
    Float64Array.from({ length: width }, (_, g) => mean((m) => scaledRows[m]![f]! * scaledRows[m]![g]!)),
  );
  for (let f = 0; f < width; f++) matrix[f]![f]! += RIDGE;
  const right = Float64Array.from({ length: width }, (_, f) =>
    mean((m) => scaledRows[m]![f]! * (targets[m]! - targetMean)),
  );
  const slopes = solved(matrix, right);
  const ruled = (row: Float64Array) => row.reduce((sum, value, f) => sum + value * slopes[f]!, targetMean);
  // Fitted to its own members a rule misses less than it will miss the next: by the slopes it could choose.
  const effective = total ** 2 / weights.reduce((sum, weight) => sum + weight * weight, 0);
  const widen = Math.sqrt(effective / Math.max(1, effective - width - 1));
  const misses = Float64Array.from(targets, (target, m) => (target - ruled(scaledRows[m]!)) * widen);
  return { value: ruled(scaled(asked)), misses, weights };
}

/** Solves a symmetric positive system by Cholesky's method; a direction without any say gets 0. */
export function solved(matrix: readonly Float64Array[], right: Float64Array): Float64Array {
  const n = right.length;
  const lower = matrix.map((row) => row.slice());
  const value = right.slice();
  for (let j = 0; j < n; j++) {
    for (let k = 0; k < j; k++) lower[j]![j]! -= lower[j]![k]! ** 2;
    const pivot = lower[j]![j]!;
    const root = pivot > 1e-12 ? Math.sqrt(pivot) : Number.POSITIVE_INFINITY;
    lower[j]![j] = root;
    for (let i = j + 1; i < n; i++) {
      for (let k = 0; k < j; k++) lower[i]![j]! -= lower[i]![k]! * lower[j]![k]!;
      lower[i]![j]! /= root;
    }
  }
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) value[i]! -= lower[i]![k]! * value[k]!;
    value[i]! /= lower[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) value[i]! -= lower[k]![i]! * value[k]!;
    value[i]! /= lower[i]![i]!;
  }
  return value;
}

/** The value under which `share` of the weight lies. */
export function weightedQuantile(values: Float64Array, weights: Float64Array, share: number): number {
  const order = Array.from(values.keys())
    .filter((k) => weights[k]! > 0)
    .sort((a, b) => values[a]! - values[b]!);
  const total = order.reduce((sum, k) => sum + weights[k]!, 0);
  let below = 0;
  for (const k of order) {
    below += weights[k]!;
    if (below >= share * total) return values[k]!;
  }
  return values[order.at(-1)!]!;
}
