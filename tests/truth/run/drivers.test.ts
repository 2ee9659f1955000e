import { expect, test } from "vitest";
import { nextUnit, openStream, STREAM_WORDS, seedWords } from "../../../engine/chance/stream.ts";
import { drivers } from "../../../engine/drivers/drivers.ts";
import { DRIVER_FACTORS } from "../../../engine/drivers/driversMember.ts";
import { driversShares } from "../../../engine/drivers/driversShares.ts";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { record } from "../record.ts";
import { plainInput, readPlain } from "./plainScenario.ts";

function opened(member: number) {
  const state = new Uint32Array(STREAM_WORDS);
  openStream(state, seedWords("ishigami"), member, "resample");
  return state;
}

test("variance shares of the Ishigami function are the published ones", () => {
  // f = sin x1 + a sin² x2 + b x3⁴ sin x1, each x even on −π…π, a = 7, b = 0.1. T. Ishigami and T. Homma, An importance
  // quantification technique in uncertainty analysis for computer models, Proc. ISUMA 1990, 398–403. In closed form
  // V1 = (1 + b π⁴/5)² / 2, V2 = a²/8, V13 = 8 b² π⁸ / 225: first order 0.3139, 0.4424, 0; total 0.5576, 0.4424, 0.2437.
  const published = { first: [0.3139, 0.4424, 0], total: [0.5576, 0.4424, 0.2437] };
  const f = ([x1, x2, x3]: number[]) => Math.sin(x1!) + 7 * Math.sin(x2!) ** 2 + 0.1 * x3! ** 4 * Math.sin(x1!);
  const ROWS = 20_000;
  const state = opened(0);
  const drawn = () => Array.from({ length: 3 }, () => Math.PI * (2 * nextUnit(state) - 1));
  const rows = Array.from({ length: ROWS }, () => ({ a: drawn(), b: drawn() }));
  const shares = driversShares(
    Float64Array.from(rows, ({ a }) => f(a)),
    Float64Array.from(rows, ({ b }) => f(b)),
    [0, 1, 2].map((k) => Float64Array.from(rows, ({ a, b }) => f(a.map((value, j) => (j === k ? b[j]! : value))))),
    opened(1),
  )!;
  const gaps = shares.factors.flatMap(({ first, total }, k) => [
    { off: Math.abs(first.value - published.first[k]!), plusMinus: first.plusMinus },
    { off: Math.abs(total.value - published.total[k]!), plusMinus: total.plusMinus },
  ]);
  record({
    what: "variance shares of the Ishigami function, first order and total",
    source: "Ishigami & Homma 1990",
    tolerance: 0.01,
    why: "sampling error of 20,000 rows, of which 95 in 100 lie within 0.013",
    worst: Math.max(...gaps.map(({ off }) => off)),
    unit: "share",
    n: gaps.length,
  });
  for (const { off, plusMinus } of gaps) {
    expect(off).toBeLessThan(0.01);
    // The stated sampling error is neither too small for what was met nor a licence for anything.
    expect(off).toBeLessThan(1.5 * plusMinus);
    expect(plusMinus).toBeLessThan(0.02);
  }
  expect(Math.abs(shares.firstSum.value - 0.7563)).toBeLessThan(shares.firstSum.plusMinus * 1.5);
});

test("the stated sampling error holds the truth in about 95 of 100 samples", () => {
  // y = 2 x1 + x2 with even draws: shares 4/5 and 1/5, by hand.
  let held = 0;
  const SAMPLES = 200;
  for (let sample = 0; sample < SAMPLES; sample++) {
    const state = opened(100 + sample);
    const drawn = () => [nextUnit(state), nextUnit(state)];
    const rows = Array.from({ length: 200 }, () => ({ a: drawn(), b: drawn() }));
    const f = ([x1, x2]: number[]) => 2 * x1! + x2!;
    const shares = driversShares(
      Float64Array.from(rows, ({ a }) => f(a)),
      Float64Array.from(rows, ({ b }) => f(b)),
      [0, 1].map((k) => Float64Array.from(rows, ({ a, b }) => f(a.map((value, j) => (j === k ? b[j]! : value))))),
      opened(900 + sample),
    )!;
    const truth = [0.8, 0.2];
    shares.factors.forEach(({ first, total }, k) => {
      if (Math.abs(first.value - truth[k]!) <= first.plusMinus) held++;
      if (Math.abs(total.value - truth[k]!) <= total.plusMinus) held++;
    });
  }
  // Of 800; the weighing of two estimates on the same sample makes the interval a little short. Binomial scatter is 0.8 %.
  expect(held / (4 * SAMPLES)).toBeGreaterThan(0.9);
  expect(held / (4 * SAMPLES)).toBeLessThan(0.985);
});

/**
 * Nothing but a bank and an even load that draws its current by itself: volts flat, no resistance, nothing cold, nothing sent.
 * Then lowest charge = start − idle × A × h / (Ah × health), so its parts can be told by hand.
 */
function linear(parts: Partial<ScenarioInput> = {}): ScenarioInput {
  return plainInput({
    place: { name: "Nowhere (invented)", latitudeDeg: 47, longitudeDeg: 10, zone: "Etc/UTC" },
    time: { start: "2026-06-12T00:00", end: "2026-06-13T00:00", stepMinutes: 60 },
    weather: { kind: "typical", monthlyKt: Array.from({ length: 12 }, () => 0.5), air: { maxC: 25, minC: 25 } },
    gear: [{ id: "steady", name: "steady load", working: { drawW: 12.8 }, use: { when: "always" } }],
    bank: {
      chemistry: "lfp",
      blockAh: 100,
      startShare: 0.7,
      reserveShare: 0.45,
      temperature: 25,
      internalResistanceOhm: 0.0001,
      disconnectV: 0,
      reconnectV: 0,
      openCircuitCurve: [
        { share: 0, cellV: 3.2 },
        { share: 1, cellV: 3.2001 },
      ],
    },
    sureness: { startCharge: "dataSheet", idleDraw: "guess", bankHealth: "guess" },
    ...parts,
  });
}

test("a bank and a load alone: shares of the lowest charge follow from the spreads", () => {
  const ready = prepareEnsemble(readPlain(linear()), {}, "linear");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const report = drivers(ready.ensemble, 4000)!;
  // By hand: 12.8 W from 12.8 V is 1 A for 24 h, 0.24 of 100 Ah. Start: 0.03. Idle, a quarter: 0.24 × 0.25 = 0.06.
  // Health h enters as 0.24 / h; idle times 1/h has V(idle) V(1/h) of interplay. Draws are held within 3 deviations.
  const q = inverseMoments(0.12);
  const i = { mean: 1, variance: 0.25 ** 2 * cutVariance() };
  const start = 0.03 ** 2 * cutVariance();
  const perFull = 0.24 ** 2;
  const parts = {
    idleDraw: perFull * i.variance * q.mean ** 2,
    bankHealth: perFull * q.variance * i.mean ** 2,
    startCharge: start,
    both: perFull * i.variance * q.variance,
  };
  const all = parts.idleDraw + parts.bankHealth + parts.startCharge + parts.both;
  const expected: Record<string, { first: number; total: number }> = {
    idleDraw: { first: parts.idleDraw / all, total: (parts.idleDraw + parts.both) / all },
    bankHealth: { first: parts.bankHealth / all, total: (parts.bankHealth + parts.both) / all },
    startCharge: { first: start / all, total: start / all },
  };
  const gaps = report.factors.flatMap(({ factor, margin }) => {
    const wanted = expected[factor] ?? { first: 0, total: 0 };
    return [Math.abs(margin!.first.value - wanted.first), Math.abs(margin!.total.value - wanted.total)];
  });
  record({
    what: "variance shares of the lowest charge of a bank and a load alone",
    source: "by hand: start − load × hours / capacity, independent normal figures",
    tolerance: 0.02,
    why: "sampling error of 4,000 rows, of which 95 in 100 lie within 0.03",
    worst: Math.max(...gaps),
    unit: "share",
    n: gaps.length,
  });
  for (const gap of gaps) expect(gap).toBeLessThan(0.02);
  for (const factor of ["weather", "intensity", "canopy", "panelYield"]) {
    const line = report.factors.find((each) => each.factor === factor)!;
    expect([line.margin!.first.value, line.margin!.total.value]).toEqual([0, 0]);
  }
  // What the ends do, by hand as well: idle at ±1.2816 deviations moves the lowest charge by 0.0769 × mean of 1/h.
  const idle = report.factors.find(({ factor }) => factor === "idleDraw")!;
  const meanMargin = (end: { marginGain: { value: number } }) => end.marginGain.value;
  expect(Math.abs(meanMargin(idle.low!) - meanMargin(idle.high!) - 2 * 0.06 * 1.28155 * q.mean)).toBeLessThan(0.002);
  // Without the load nothing is drawn: every member holds, and the margin rises by all that was drawn.
  const off = report.shedding.find(({ id }) => id === "steady")!;
  expect(off.holds.count).toBe(4000);
  expect(off.medianHolds).toBe(true);
  expect(Math.abs(off.marginGain.value - 0.24 * q.mean)).toBeLessThan(0.004);
});

/** Variance of a standard normal draw held within ±3. */
function cutVariance(): number {
  return normalMean((z) => Math.max(-3, Math.min(3, z)) ** 2);
}

/** Mean and variance of 1 / (1 + spread z), z held within ±3. */
function inverseMoments(spread: number): { mean: number; variance: number } {
  const inverse = (z: number) => 1 / Math.max(0.2, 1 + spread * Math.max(-3, Math.min(3, z)));
  const mean = normalMean(inverse);
  return { mean, variance: normalMean((z) => inverse(z) ** 2) - mean * mean };
}

function normalMean(of: (z: number) => number): number {
  let sum = 0;
  let weights = 0;
  for (let k = -8000; k <= 8000; k++) {
    const z = k / 1000;
    const weight = Math.exp(-0.5 * z * z);
    sum += weight * of(z);
    weights += weight;
  }
  return sum / weights;
}

test("a bank that runs empty goes on counting by what loads miss", () => {
  const parts = {
    gear: [{ id: "steady", name: "steady load", working: { drawW: 12.8 * 4 }, use: { when: "always" as const } }],
  };
  const ready = prepareEnsemble(readPlain(linear(parts)), {}, "linear");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const report = drivers(ready.ensemble, 500)!;
  // 0.96 drawn of 0.7: all but a few members run dry, and their lowest charge is 0 alike.
  expect(report.dry.share).toBeGreaterThan(0.7);
  expect(report.sentences.some((sentence) => sentence.includes("goes on counting"))).toBe(true);
  // Margin = start − drawn − reserve, as though nothing had stopped it: but a smaller bank misses energy in Wh of the plan.
  expect(Math.abs(report.meanMarginShare - (0.7 - 0.96 - 0.45))).toBeLessThan(0.05);
  const idle = report.factors[DRIVER_FACTORS.indexOf("idleDraw")]!;
  expect(idle.margin!.first.value).toBeGreaterThan(0.7);
});
