import { expect, test } from "vitest";
import { prepare } from "../../../engine/run/prepare.ts";
import { trace } from "../../../engine/run/trace.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { sizeHandbook } from "../../../engine/size/sizeHandbook.ts";
import { plainInput, readPlain } from "./plainScenario.ts";

// The handbook's sum (IEEE Std 1013, lead-acid batteries for stand-alone photovoltaic systems; steps from memory): daily
// ampere-hours × days without charge ÷ depth of discharge. It knows neither resistance nor a voltage that moves, so the bank it is
// held against has neither: 12 V at any charge, and a load in watts at 12 V.

const FLAT = [
  { share: 0, cellV: 3 },
  { share: 1, cellV: 3 },
];

function bankInput(blockAh: number, days: number, reserveShare: number, drawA: number): ScenarioInput {
  const end = new Date(Date.UTC(2026, 5, 12) + days * 86_400_000).toISOString().slice(0, 16);
  return plainInput({
    time: { start: "2026-06-12T00:00", end, stepMinutes: 10 },
    gear: [{ id: "load", name: "load", working: { drawA, atV: 12 }, use: { when: "always" } }],
    bank: {
      chemistry: "lfp",
      blockAh,
      startShare: 1,
      reserveShare,
      temperature: 25,
      openCircuitCurve: FLAT,
      internalResistanceOhm: 0,
      disconnectV: 0,
      reconnectV: 0,
    },
  });
}

function handbookOf(input: ScenarioInput, days: number) {
  const ready = prepare(readPlain(input));
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return sizeHandbook(ready.prepared, days);
}

function belowFromH(input: ScenarioInput): number | null {
  const run = trace(readPlain(input));
  if (!run.ok) throw new Error(run.problems[0]!.message);
  const { belowReserveFromMs } = run.trace.verdict;
  return belowReserveFromMs === null ? null : (belowReserveFromMs - run.trace.prepared.grid.startMs) / 3_600_000;
}

test.each([
  { days: 1, reserveShare: 0.2, drawA: 5 },
  { days: 2, reserveShare: 0.2, drawA: 100 / 24 },
  { days: 3, reserveShare: 0.5, drawA: 2.5 },
])(
  "without sun the handbook's bank holds exactly $days days down to $reserveShare",
  ({ days, reserveShare, drawA }) => {
    const { dailyAh, blockAh } = handbookOf(bankInput(100, 1, reserveShare, drawA), days);
    expect(dailyAh).toBeCloseTo(24 * drawA, 9);
    expect(blockAh).toBeCloseTo((24 * drawA * days) / (1 - reserveShare), 9);
    // Rounding may put the last step a hair under the line: one part in a million of the bank is neither here nor there.
    expect(belowFromH(bankInput(blockAh * (1 + 1e-6), days, reserveShare, drawA))).toBeNull();
    expect(belowFromH(bankInput(blockAh * 0.999, days, reserveShare, drawA))).toBeGreaterThan(
      24 * days * 0.999 - 10 / 60,
    );
    const longer = belowFromH(bankInput(blockAh * (1 + 1e-6), days + 1, reserveShare, drawA))!;
    expect(longer).toBeGreaterThan(24 * days - 1e-9);
    expect(longer).toBeLessThan(24 * days + 10 / 60 + 1e-9); // the next step
  },
);

test("the worked example of a weekend: 100 Ah a day, 2 days, 0.8 deep, is 250 Ah", () => {
  // Derived from the same steps; see tests/truth/run/commonPractice.test.ts for the example in full.
  const { bankAh, temperatureFactor } = handbookOf(bankInput(100, 1, 0.2, 100 / 24), 2);
  expect(bankAh).toBeCloseTo(250, 9);
  expect(temperatureFactor).toBe(1);
});

// Multiplier against temperature: widely printed for lead-acid banks, from memory; 80, 60, 40 and 20 °F.
test.each([
  { tempC: 26.7, factor: 1 },
  { tempC: 15.6, factor: 1.11 },
  { tempC: 4.4, factor: 1.3 },
  { tempC: -6.7, factor: 1.59 },
  { tempC: 35, factor: 1 },
  { tempC: -30, factor: 1.59 },
])("a lead bank at $tempC °C is taken $factor times as large", ({ tempC, factor }) => {
  const input = bankInput(100, 1, 0.5, 100 / 24);
  const lead = { chemistry: "flooded", blockAh: 100, startShare: 1, reserveShare: 0.5, temperature: tempC } as const;
  const { bankAh, temperatureFactor, coldestBankC } = handbookOf({ ...input, bank: lead }, 2);
  expect(temperatureFactor).toBe(factor);
  expect(coldestBankC).toBe(tempC);
  expect(bankAh).toBeCloseTo(400 * factor, 9);
});

test("blocks side by side share the handbook's bank", () => {
  const input = bankInput(100, 1, 0.2, 100 / 24);
  const two = handbookOf({ ...input, bank: { ...input.bank, inParallel: 2 } }, 2);
  expect([two.bankAh, two.blockAh].map((ah) => Number(ah.toFixed(6)))).toEqual([250, 125]);
});
