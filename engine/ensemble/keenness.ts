import { toGrid } from "../grid.ts";

/** Nodes of the table that turns a normal draw into a factor, from −5 to 5. */
const NODES = 161;
const FARTHEST = 5;

/**
 * How much more or less than planned is sent at each normal value: a log-normal factor of mean 1, as a table for `keennessAt`.
 * @param logVariance variance of its logarithm
 */
export function keennessTable(logVariance: number): Float64Array {
  const sigma = Math.sqrt(logVariance);
  return new Float64Array(NODES).map((_, k) => {
    const z = -FARTHEST + (2 * FARTHEST * k) / (NODES - 1);
    return toGrid(Math.exp(sigma * z - logVariance / 2));
  });
}

/** @memberLoop */
export function keennessAt(table: Float64Array, normal: number): number {
  const at = Math.max(0, Math.min(NODES - 1.000001, ((normal + FARTHEST) * (NODES - 1)) / (2 * FARTHEST)));
  const k = at | 0;
  return table[k]! + (table[k + 1]! - table[k]!) * (at - k);
}
