import { expect, test } from "vitest";
import { oddsReport, quantileOf, replayMember, runMembers } from "../../../engine/odds/odds.ts";
import { mergeOdds } from "../../../engine/odds/oddsPart.ts";
import { oddsPartJson, readOddsPart } from "../../../engine/odds/oddsPartJson.ts";
import { wilson } from "../../../engine/odds/wilson.ts";
import { record } from "../../truth/record.ts";
import { exampleEnsemble, variantChanges } from "../ensemble/exampleEnsemble.ts";

const ensemble = exampleEnsemble("walnut-grove", variantChanges("walnut-grove", "meadow"));
const whole = runMembers(ensemble, 0, 120);
const report = oddsReport(ensemble, whole);

test("Wilson's interval is the published one", () => {
  // Brown, Cai, DasGupta, Statistical Science 16 (2001) 101–133, from the formula: 10 of 100 gives 0.0552 to 0.1744; 0 of 10 gives 0 to 0.2775 (values from memory, recomputed).
  const rows: [count: number, of: number, low: number, high: number][] = [
    [10, 100, 0.0552, 0.1744],
    [0, 10, 0, 0.2775],
    [10, 10, 0.7225, 1],
  ];
  const errors = rows.flatMap(([count, of, low, high]) => {
    const found = wilson(count, of);
    return [Math.abs(found.low - low), Math.abs(found.high - high)];
  });
  const worst = Math.max(...errors);
  record({
    what: "interval of a share out of a sample",
    source: "Wilson 1927; values recomputed (from memory)",
    tolerance: 1e-4,
    why: "four decimals",
    worst,
    unit: "",
    n: errors.length,
  });
  expect(worst).toBeLessThan(1e-4);
});

test("parts of an ensemble are the ensemble, to the last bit, in any order and through a file", () => {
  const parts = [runMembers(ensemble, 70, 120), runMembers(ensemble, 0, 33), runMembers(ensemble, 33, 70)];
  expect(mergeOdds(parts)).toEqual(whole);
  const read = parts.map((part) => readOddsPart(JSON.parse(JSON.stringify(oddsPartJson(part, "x"))), "x"));
  expect(mergeOdds(read.map((each) => (each.ok ? each.part : whole)))).toEqual(whole);
  expect(() => mergeOdds([parts[0]!, parts[1]!])).toThrow(/follow one another/);
  expect(readOddsPart({ format: "duskline-odds-part", version: 1, scenario: "x" }, "x")).toMatchObject({ ok: false });
  expect(readOddsPart(oddsPartJson(whole, "x"), "y")).toMatchObject({ ok: false });
});

test("the named member in the bad tail is the one of rank one in twenty, and its trace is the member", () => {
  const lowest = whole.outcomes.lowestShare;
  const worse = lowest.filter((share) => share < lowest[report.tailMember]!).length;
  expect(worse).toBeLessThanOrEqual(0.05 * 120);
  const trace = replayMember(ensemble, report.tailMember);
  expect(trace.verdict.lowestShare).toBe(lowest[report.tailMember]);
  // The trace sums every group again, so only the last bits of a sum may differ.
  expect(trace.days.reduce((sum, day) => sum + day.solarWh, 0)).toBeCloseTo(
    whole.outcomes.solarWh[report.tailMember]!,
    6,
  );
  const other = replayMember(ensemble, (report.tailMember + 1) % 120);
  expect(other.verdict.lowestShare).not.toBe(trace.verdict.lowestShare);
});

test("the report counts what the members say", () => {
  const { outcomes } = whole;
  expect(report.holds.count).toBe(outcomes.belowFromStep.filter((step) => step < 0).length);
  expect(report.dark.count).toBe(outcomes.unservedWh.filter((wh) => wh > 0).length);
  expect(report.lowestShare.p50).toBeCloseTo(quantileOf(outcomes.lowestShare.slice().sort(), 0.5), 12);
  const half = report.charge.p50;
  expect(half[0]).toBeGreaterThan(0.9);
  expect(half.every((share, i) => report.charge.p25[i]! <= share && share <= report.charge.p75[i]!)).toBe(true);
  // Every member is in every row of the counts.
  for (const [counts, bins] of [
    [whole.chargeCounts, 256],
    [whole.solarCounts, 64],
    [whole.loadCounts, 64],
  ] as const) {
    for (let row = 0; row < counts.length / bins; row += 37) {
      expect(counts.subarray(row * bins, (row + 1) * bins).reduce((sum, count) => sum + count, 0)).toBe(120);
    }
  }
  // A band read from counts lies within a bin of the exact quantile.
  const ends = outcomes.endShare.slice().sort();
  expect(Math.abs(report.charge.p50.at(-1)! - quantileOf(ends, 0.5))).toBeLessThan(0.02);
  expect(report.sentences.join(" ")).toMatch(/holds to Sun 11 Oct 16:00 in \d+ of 100 skies/);
});

test("what goes unserved is booked on those that go without first", () => {
  const shed = exampleEnsemble("walnut-grove", [{ at: "shedding", to: ["fridge", "hf-run"] }]);
  const part = runMembers(shed, 0, 60);
  const { unservedByDevice, unservedWh } = oddsReport(shed, part);
  const booked = unservedByDevice.reduce((sum, device) => sum + device.meanWh, 0);
  // Booked by the plan's draws and not by the member's own, so a shortfall larger than those finds no device.
  expect(booked).toBeGreaterThan(0.75 * unservedWh.mean);
  expect(booked).toBeLessThan(unservedWh.mean + 0.5);
  const plain = exampleEnsemble("walnut-grove");
  const before = oddsReport(plain, runMembers(plain, 0, 60)).unservedByDevice.find((device) => device.id === "fridge")!;
  expect(unservedByDevice.find((device) => device.id === "fridge")!.meanWh).toBeGreaterThan(before.meanWh);
});

test("members must be a sensible range", () => {
  for (const [from, to] of [
    [0, 0],
    [5, 2],
    [-1, 3],
    [0, 1.5],
    [0, 1e9],
    [0, Number.NaN],
  ] as const) {
    expect(() => runMembers(ensemble, from, to)).toThrow(/members must be whole numbers/);
  }
});
