import { expect, test } from "vitest";
import { normalQuantile } from "../../../engine/chance/normalQuantile.ts";

// Quantiles of the standard normal distribution as printed in any table (Abramowitz and Stegun 1964, table 26.5; NIST/SEMATECH
// e-Handbook 1.3.6.7.1), to ten digits from an independent library (SciPy 1.17, scipy.stats.norm.isf).
const published: [upperShare: number, z: number][] = [
  [0.4, 0.2533471031],
  [0.25, 0.6744897502],
  [0.1, 1.2815515655],
  [0.076, 1.4325027208],
  [0.074, 1.4466320672],
  [0.05, 1.644853627],
  [0.025, 1.9599639845],
  [0.01, 2.326347874],
  [0.005, 2.5758293035],
  [1e-3, 3.0902323062],
  [1e-4, 3.7190164855],
  [1e-6, 4.7534243088],
  [1e-9, 5.997807015],
];
// The published error is one part in ten million of the quantile.
test.each(published)("a share of %d lies beyond its published quantile", (share, z) => {
  expect(Math.abs(normalQuantile(share) + z)).toBeLessThan(1.2e-7 * Math.max(1, z));
  if (share > 1e-6) expect(Math.abs(normalQuantile(1 - share) - z)).toBeLessThan(1.2e-7 * Math.max(1, z));
});

test("it is odd about one half and rises everywhere, over its seams too", () => {
  expect(normalQuantile(0.5)).toBe(0);
  for (const p of [0.01, 0.075, 0.3]) expect(normalQuantile(p)).toBeCloseTo(-normalQuantile(1 - p), 6);
  let before = Number.NEGATIVE_INFINITY;
  for (let k = 1; k < 100_000; k++) {
    const z = normalQuantile(k / 100_000);
    expect(z).toBeGreaterThan(before);
    before = z;
  }
  for (const p of [2 ** -33, 0.0110485434560398, Math.SQRT1_2, 0.075, 0.925]) {
    expect(normalQuantile(p * (1 + 1e-6))).toBeGreaterThan(normalQuantile(p * (1 - 1e-6)));
  }
});
