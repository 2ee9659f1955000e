/** How two series go together, −1…1; 0 where fewer than `fewest` pairs are there or one of them stands still. */
export function togetherness(first: ArrayLike<number>, second: ArrayLike<number>, fewest: number): number {
  let n = 0;
  let [sumX, sumY, sumXX, sumYY, sumXY] = [0, 0, 0, 0, 0];
  for (let i = 0; i < first.length; i++) {
    const x = first[i]!;
    const y = second[i]!;
    if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
    n++;
    sumX += x;
    sumY += y;
    sumXX += x * x;
    sumYY += y * y;
    sumXY += x * y;
  }
  if (n < fewest) return 0;
  const [varX, varY] = [sumXX - (sumX * sumX) / n, sumYY - (sumY * sumY) / n];
  return varX > 1e-9 && varY > 1e-9 ? (sumXY - (sumX * sumY) / n) / Math.sqrt(varX * varY) : 0;
}

/** Pairs under which nothing is said, and togetherness from which on something is. */
const FEWEST = 20;
const CLEAR = 0.3;

/**
 * Which sign a bank's current has while it charges, told by what goes with it: the charge rises, the sun shines, the volts rise.
 * @returns null where nothing tells
 */
export function currentSign(
  current: Float64Array,
  charge: Float64Array | null,
  pvW: Float64Array | null,
  bankV: Float64Array | null,
): "chargingPositive" | "chargingNegative" | null {
  const rises = charge === null ? null : riseOverHour(charge);
  for (const witness of [rises, pvW, bankV]) {
    if (witness === null) continue;
    const together = togetherness(current, witness, FEWEST);
    if (Math.abs(together) >= CLEAR) return together > 0 ? "chargingPositive" : "chargingNegative";
  }
  const signs = current.filter((amperes) => Math.abs(amperes) > 0.02);
  // A current that never changes its sign says nothing.
  return signs.length > 0 ? null : "chargingPositive";
}

/** How far the charge rises over some rows about each: one row alone is less than the display resolves. */
function riseOverHour(charge: Float64Array): Float64Array {
  const reach = Math.max(1, Math.min(30, Math.floor(charge.length / 40)));
  return charge.map((_, i) => charge[Math.min(charge.length - 1, i + reach)]! - charge[Math.max(0, i - reach)]!);
}
