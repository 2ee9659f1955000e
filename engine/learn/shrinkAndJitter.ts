import { nextNormal, openStream, STREAM_WORDS } from "../chance/stream.ts";

/** How much of the past's certainty is let go at each resampling: 0.95 to 0.99 in the paper. */
export const DISCOUNT = 0.98;

/**
 * Moves copies of particles apart without widening what they say together: each row is drawn towards the mean of all and
 * given a normal draw of its own, so that mean and covariance stay what they were.
 * @param rows `columns` numbers for each particle, changed in place; equal weights
 * @see J. Liu and M. West, in A. Doucet et al., Sequential Monte Carlo Methods in Practice, 2001, chapter 10 (from memory)
 */
export function shrinkAndJitter(rows: Float64Array, columns: number, words: Int32Array): void {
  const count = rows.length / columns;
  if (count < 2) return;
  const a = (3 * DISCOUNT - 1) / (2 * DISCOUNT);
  const h = Math.sqrt(1 - a * a);
  const mean = new Float64Array(columns);
  rows.forEach((value, k) => {
    mean[k % columns]! += value / count;
  });
  const covariance = new Float64Array(columns * columns);
  for (let p = 0; p < count; p++) {
    for (let r = 0; r < columns; r++) {
      for (let c = 0; c <= r; c++) {
        const product = (rows[p * columns + r]! - mean[r]!) * (rows[p * columns + c]! - mean[c]!);
        covariance[r * columns + c]! += product / (count - 1);
      }
    }
  }
  const root = lowerRoot(covariance, columns);
  const state = new Uint32Array(STREAM_WORDS);
  const normals = new Float64Array(columns);
  for (let p = 0; p < count; p++) {
    openStream(state, words, p, "resample");
    for (let c = 0; c < columns; c++) normals[c] = nextNormal(state);
    for (let r = 0; r < columns; r++) {
      let moved = 0;
      for (let c = 0; c <= r; c++) moved += root[r * columns + c]! * normals[c]!;
      const at = p * columns + r;
      rows[at] = a * rows[at]! + (1 - a) * mean[r]! + h * moved;
    }
  }
}

/** Cholesky's root of a covariance; a column without variance of its own gets none. */
function lowerRoot(covariance: Float64Array, size: number): Float64Array {
  const root = new Float64Array(size * size);
  for (let c = 0; c < size; c++) {
    let left = covariance[c * size + c]!;
    for (let k = 0; k < c; k++) left -= root[c * size + k]! * root[c * size + k]!;
    // Rounding leaves a little of what is exactly determined by the columns before.
    if (left <= 1e-12 * covariance[c * size + c]! || left <= 0) continue;
    root[c * size + c] = Math.sqrt(left);
    for (let r = c + 1; r < size; r++) {
      let sum = covariance[r * size + c]!;
      for (let k = 0; k < c; k++) sum -= root[r * size + k]! * root[c * size + k]!;
      root[r * size + c] = sum / root[c * size + c]!;
    }
  }
  return root;
}
