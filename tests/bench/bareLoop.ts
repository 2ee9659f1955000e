/**
 * The yardstick: for each member, one multiply-add per step over arrays of the given length, written back. It does
 * what no simulation can do without, reading a prepared row and carrying a state, and nothing else.
 */
export function bareLoop(members: number, steps: number): () => number {
  const gain = new Float64Array(steps).fill(0.999);
  const netWh = Float64Array.from({ length: steps }, (_, i) => (i % 24) - 11.5);
  const storedWh = new Float64Array(steps);
  return () => {
    let last = 0;
    for (let member = 0; member < members; member++) {
      let stored = member;
      for (let i = 0; i < steps; i++) {
        stored = stored * gain[i]! + netWh[i]!;
        storedWh[i] = stored;
      }
      last = stored;
    }
    return last;
  };
}
