import { describe, expect, test } from "vitest";
import type { PreparedEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { BAND_SHARES, type Bands, oddsReport, replayMember, runMembers } from "../../../engine/odds/odds.ts";
import { CHARGE_BINS, POWER_BINS, powerScale } from "../../../engine/odds/oddsPart.ts";
import { exampleEnsemble, variantChanges } from "../ensemble/exampleEnsemble.ts";
import { oneEnsemble } from "../pool/oneEnsemble.ts";

// Bands are read from counts. Here every member is replayed as a trace by itself, and its values are sorted: no counts, no bins.
const MEMBERS = 61; // so that no share of the members is a whole number of them

/** What every member had, one array a step, smallest first. */
function sortedMembers(ensemble: PreparedEnsemble) {
  const runs = Array.from({ length: MEMBERS }, (_, m) => replayMember(ensemble, m));
  const byStep = (values: readonly Float64Array[]) =>
    Array.from(values[0]!, (_, i) => Float64Array.from(values, (of) => of[i]!).sort());
  return {
    charge: byStep(runs.map(({ chargeShare }) => chargeShare)),
    solarW: byStep(runs.map(({ record }) => record.solarW)),
    loadW: byStep(runs.map(({ record }) => record.demandW)),
  };
}

/**
 * The quantile of grouped values, L + w (q n − F) / f, with f values in the class of width w that begins at L and F values below it:
 * the formula of any textbook of statistics for a median out of classes (common practice, no source).
 */
function groupedQuantile(sorted: Float64Array, share: number, top: number, bins: number): number {
  const binOf = (value: number) => Math.min(bins - 1, Math.floor((value / top) * bins)); // a full bank is in the last
  const bin = binOf(sorted[Math.ceil(share * sorted.length) - 1]!);
  const below = sorted.filter((value) => binOf(value) < bin).length;
  const within = sorted.filter((value) => binOf(value) === bin).length;
  return (top / bins) * (bin + (share * sorted.length - below) / within);
}

const ensembles: [string, PreparedEnsemble][] = [
  ["the walnut grove with its meadow", exampleEnsemble("walnut-grove", variantChanges("walnut-grove", "meadow"))],
  ["the polar hut", exampleEnsemble("polar-hut")],
  ["a day and a half with a generator", oneEnsemble()],
];

describe.each(ensembles)("%s", (_, ensemble) => {
  const report = oddsReport(ensemble, runMembers(ensemble, 0, MEMBERS));
  const members = sortedMembers(ensemble);
  const scale = powerScale(ensemble.prepared);
  const quantities = [
    ["charge", report.charge, members.charge, 1, CHARGE_BINS],
    ["solarW", report.solarW, members.solarW, scale.solarW, POWER_BINS],
    ["loadW", report.loadW, members.loadW, scale.loadW, POWER_BINS],
  ] as const;

  test.each(quantities)(
    "%s: each band lies in the bin of the exact order statistic, at every step",
    (_, bands, sorted, top, bins) => {
      const binWidth = top / bins;
      expect(bands.p50).toHaveLength(sorted.length);
      let worst = 0;
      const moving = new Set<number>();
      forEachBand(bands, (band, share) => {
        for (const [i, values] of sorted.entries()) {
          const exact = values[Math.ceil(share * MEMBERS) - 1]!;
          worst = Math.max(worst, Math.abs(band[i]! - exact) / binWidth);
          moving.add(Math.floor(exact / binWidth));
        }
      });
      expect(worst).toBeLessThanOrEqual(1 + 1e-9);
      expect(moving.size, "bins that a band passes through").toBeGreaterThan(4);
    },
  );

  test.each(quantities)("%s: inside its bin a band lies as far in as the members do", (_, bands, sorted, top, bins) => {
    let worst = 0;
    forEachBand(bands, (band, share) => {
      for (const [i, values] of sorted.entries()) {
        worst = Math.max(worst, (bins / top) * Math.abs(band[i]! - groupedQuantile(values, share, top, bins)));
      }
    });
    expect(worst).toBeLessThan(1e-6);
  });

  test("nobody's power goes beyond the histogram, and no charge beyond a full bank", () => {
    const most = (sorted: readonly Float64Array[]) => Math.max(...sorted.map((values) => values.at(-1)!));
    expect(most(members.solarW)).toBeLessThan(scale.solarW);
    expect(most(members.loadW)).toBeLessThan(scale.loadW);
    expect(most(members.charge)).toBeLessThanOrEqual(1 + 1e-9);
  });
});

function forEachBand({ p5, p25, p50, p75, p95 }: Bands, look: (band: Float64Array, share: number) => void): void {
  for (const [k, band] of [p5, p25, p50, p75, p95].entries()) look(band, BAND_SHARES[k]!);
}
