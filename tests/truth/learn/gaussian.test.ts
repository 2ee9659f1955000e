import { expect, test } from "vitest";
import { nextNormal, nextUnit, openStream, STREAM_WORDS, seedWords } from "../../../engine/chance/stream.ts";
import { effectiveMembers, particleWeights, systematicResample } from "../../../engine/learn/particleWeights.ts";
import { shrinkAndJitter } from "../../../engine/learn/shrinkAndJitter.ts";
import { record } from "../record.ts";

// A normal quantity, read once by a meter with a normal error: mean and variance after the reading have a closed form, that of
// one step of R. E. Kalman, Transactions of the ASME, Journal of Basic Engineering 82 (1960) 35–45; any statistics textbook.
const PRIOR = { mean: 0.6, sd: 0.08 };
const METER_SD = 0.03;
const READ = 0.48;
const GAIN = PRIOR.sd ** 2 / (PRIOR.sd ** 2 + METER_SD ** 2);
const POSTERIOR = { mean: PRIOR.mean + GAIN * (READ - PRIOR.mean), sd: Math.sqrt((1 - GAIN) * PRIOR.sd ** 2) };
const COUNT = 20_000;

function drawn() {
  const state = new Uint32Array(STREAM_WORDS);
  openStream(state, seedWords("toy"), 0, "figures");
  const values = Float64Array.from({ length: COUNT }, () => PRIOR.mean + PRIOR.sd * nextNormal(state));
  return { state, values };
}

const meanOf = (values: Float64Array, weights: Float64Array) =>
  values.reduce((sum, value, k) => sum + weights[k]! * value, 0);

test("weights, thinning and moving apart keep the closed form of a normal quantity read by a normal meter", () => {
  const { state, values } = drawn();
  const weights = particleWeights(values.map((value) => -0.5 * ((READ - value) / METER_SD) ** 2));
  const even = new Float64Array(COUNT).fill(1 / COUNT);
  const weighed = meanOf(values, weights);
  const parents = systematicResample(weights, nextUnit(state));
  const rows = Float64Array.from(parents, (parent) => values[parent]!);
  shrinkAndJitter(rows, 1, seedWords("apart"));
  const mean = meanOf(rows, even);
  const sd = Math.sqrt(
    meanOf(
      rows.map((value) => (value - mean) ** 2),
      even,
    ),
  );
  const worst = Math.max(
    Math.abs(weighed - POSTERIOR.mean),
    Math.abs(mean - POSTERIOR.mean),
    Math.abs(sd - POSTERIOR.sd),
  );
  record({
    what: "mean and spread after a reading, normal quantity and normal meter, 20,000 particles",
    source: "closed form, Kalman 1960",
    tolerance: 0.0004,
    why: "one sampling error of particles worth 5,000; this seed's are half of that",
    worst,
    unit: "of full",
    n: 3,
  });
  expect(worst).toBeLessThan(0.0004);
  expect(new Set(rows).size).toBe(COUNT); // copies are not identical
});

test("the effective sample size is the closed form of a normal quantity read by a normal meter", () => {
  const { values } = drawn();
  const weights = particleWeights(values.map((value) => -0.5 * ((READ - value) / METER_SD) ** 2));
  // E[w]² / E[w²] for w = exp(−(y − x)² / 2σ²), x normal: both are integrals of normal densities.
  const s2 = METER_SD ** 2;
  const t2 = PRIOR.sd ** 2;
  const d2 = (READ - PRIOR.mean) ** 2;
  const meanWeight = Math.sqrt(s2 / (s2 + t2)) * Math.exp(-d2 / (2 * (s2 + t2)));
  const meanSquare = Math.sqrt(s2 / (s2 + 2 * t2)) * Math.exp(-d2 / (s2 + 2 * t2));
  const exact = (COUNT * meanWeight ** 2) / meanSquare;
  const worst = Math.abs(effectiveMembers(weights) / exact - 1);
  record({
    what: "effective sample size, normal quantity and normal meter, 20,000 particles",
    source: "closed form of E[w]²/E[w²] (Kong, Liu & Wong 1994, from memory)",
    tolerance: 0.005,
    why: "half the sampling error of the mean square weight; this seed's is less",
    worst,
    unit: "",
    n: 1,
  });
  expect(worst).toBeLessThan(0.005);
});
