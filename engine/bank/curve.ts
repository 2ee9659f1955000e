/** One point of a piecewise-linear curve. */
export type CurvePoint = readonly [x: number, y: number];

/** Reads a piecewise-linear curve; beyond its ends it stays level. */
export function onCurve(curve: readonly CurvePoint[], x: number): number {
  const first = curve[0]!;
  if (x <= first[0]) return first[1];
  for (let p = 1; p < curve.length; p++) {
    const [x0, y0] = curve[p - 1]!;
    const [x1, y1] = curve[p]!;
    if (x <= x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
  }
  return curve.at(-1)![1];
}

/** Reads a curve as a staircase: the value of the last point at or below `x`, and `below` before the first. */
export function onStairs(curve: readonly CurvePoint[], x: number, below: number): number {
  let value = below;
  for (const [at, y] of curve) if (x > at) value = y;
  return value;
}
