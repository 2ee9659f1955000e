import { normalQuantile } from "./normalQuantile.ts";

/** The middle is read from a table: the quantile at each 4096th of all draws. */
const NODES = 4096;
const WORDS_PER_NODE = 2 ** 32 / NODES;
/** Nodes at either end, a 64th of all draws, in which the curve bends too much for a table. */
const OUTER = 64;
const QUANTILES = Float64Array.from({ length: NODES }, (_, k) => (k === 0 ? 0 : normalQuantile(k / NODES)));

/**
 * The standard normal value at the share of all draws that a word of 32 bits stands for, (word + ½) ÷ 2³². In the middle straight between
 * the nodes of a table, within 1.1e-5 of `normalQuantile` and half its time; the outer 64ths by `normalQuantile` itself. Rises with the word,
 * over the seams too.
 * @param word 0…4294967295
 * @memberLoop
 */
export function normalOfWord(word: number): number {
  const node = word >>> 20;
  if (node < OUTER || node >= NODES - OUTER) return normalQuantile((word + 0.5) * 2.3283064365386963e-10); // 2^-32
  const left = QUANTILES[node]!;
  return left + ((word & (WORDS_PER_NODE - 1)) + 0.5) * 9.5367431640625e-7 * (QUANTILES[node + 1]! - left); // 2^-20
}
