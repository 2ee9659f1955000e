/**
 * The yardstick: one multiply-add for each place of each array, written back. It reads and writes what a simulation
 * with these arrays cannot do without touching, and works out nothing else.
 * @param lengths of the arrays that the measured loop writes
 */
export function bareLoop(lengths: readonly number[]): () => void {
  const rows = lengths.map((length) => Float64Array.from({ length }, (_, i) => (i % 24) - 11.5));
  const outs = lengths.map((length) => new Float64Array(length));
  return () => {
    for (let r = 0; r < rows.length; r++) multiplyAdd(rows[r]!, outs[r]!);
  };
}

function multiplyAdd(row: Float64Array, out: Float64Array): void {
  for (let i = 0; i < row.length; i++) out[i] = out[i]! * 0.999 + row[i]!;
}
