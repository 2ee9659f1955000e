import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { drawA, openCircuitV, peukertFactorAt } from "../../../engine/bank/bankVoltage.ts";
import { CHEMISTRY_DATA } from "../../../engine/bank/chemistryData.ts";
import { prepareBank } from "../../../engine/bank/prepareBank.ts";
import { Bank } from "../../../engine/scenario/bank.ts";
import { record } from "../record.ts";

const battery = JSON.parse(readFileSync(new URL("../data/battery.json", import.meta.url), "utf8")) as {
  peukert: {
    examples: {
      rows: [
        capacity: number,
        ratedHours: number,
        k: number,
        currentA: number,
        hours: number,
        usableAh: number,
        drainA: number,
      ][];
    };
  };
  lfpOcv: {
    source: string;
    interpolated: { rows: [soc: number, cellV: number, packV: number][] };
    commonVendorRestTable: { rows: [number, number][] };
  };
};

function bank(parts: Record<string, unknown>, tempC = 25) {
  const full = Bank.parse({
    chemistry: "lfp",
    blockAh: 100,
    startShare: 1,
    reserveShare: 0.2,
    temperature: tempC,
    ...parts,
  });
  return prepareBank(full, Float64Array.of(tempC), 1 / 6);
}

test("lead at rest shows the voltage of the published table", () => {
  // Charge-controller manuals, as collected in trade handbooks: 12 V lead-acid at rest against charge.
  const published = [
    [1, 12.7],
    [0.9, 12.5],
    [0.8, 12.42],
    [0.7, 12.32],
    [0.6, 12.2],
    [0.5, 12.06],
    [0.4, 11.9],
    [0.3, 11.75],
    [0.2, 11.58],
    [0.1, 11.31],
    [0, 10.5],
  ] as const;
  const lead = bank({ chemistry: "agm" });
  const errors = published.map(([share, volts]) => Math.abs(openCircuitV(lead, share * lead.fullAh) - volts));
  const worst = Math.max(...errors);
  record({
    what: "lead-acid voltage at rest against charge",
    source: "charge-controller manuals' table, 12.70 V full to 10.50 V empty",
    tolerance: 0.005,
    why: "the table's own breakpoints, met through an even grid of 2048 steps",
    worst,
    unit: "V",
    n: published.length,
  });
  expect(worst).toBeLessThan(0.005);
});

test("lithium follows its published open-circuit curve, and lies within 0.2 V of the chart that sellers print", () => {
  const lithium = bank({});
  const rows = battery.lfpOcv.interpolated.rows.filter(([soc]) => soc > 0);
  const worst = Math.max(
    ...rows.map(([soc, , packV]) => Math.abs(openCircuitV(lithium, soc * lithium.fullAh) - packV)),
  );
  record({
    what: "LFP open-circuit voltage of a 4-cell pack",
    source: battery.lfpOcv.source,
    tolerance: 0.008,
    why: "0.002 V a cell between the same breakpoints",
    worst,
    unit: "V",
    n: rows.length,
  });
  expect(worst).toBeLessThan(0.008);
  const chart = battery.lfpOcv.commonVendorRestTable.rows.filter(([soc]) => soc >= 0.2 && soc < 1);
  const far = Math.max(...chart.map(([soc, volts]) => Math.abs(openCircuitV(lithium, soc * lithium.fullAh) - volts)));
  record({
    what: "LFP open-circuit voltage against the usual rest chart, 20 to 90 %",
    source: "chart as widely printed for 12.8 V packs (from memory)",
    tolerance: 0.25,
    why: "the chart is rounded and moves by 0.1 V from seller to seller",
    worst: far,
    unit: "V",
    n: chart.length,
  });
  expect(far).toBeLessThan(0.25);
});

test("Peukert: an ampere drawn fast costs more than an ampere", () => {
  const errors = battery.peukert.examples.rows.map(([capacity, ratedHours, k, currentA, hours]) => {
    // The bank is rated at 20 h; a rating at other hours is the same law with another reference current.
    const at20h = ratedHours === 20 ? capacity : capacity * (20 / ratedHours) ** ((k - 1) / k);
    const lead = bank({ chemistry: "flooded", blockAh: at20h, peukertExponent: k });
    const found = lead.fullAh / (currentA * peukertFactorAt(lead, currentA));
    return Math.abs(found / hours - 1);
  });
  const worst = Math.max(...errors);
  record({
    what: "Peukert: hours to empty",
    source: "Peukert 1897 in its usual form; 100 Ah, k 1.2, 10 A gives 8.7 h, the usual textbook example (from memory)",
    tolerance: 0.001,
    why: "the law is read from a table in steps of 1/32 of the 20-hour current",
    worst,
    unit: "of the hours",
    n: errors.length,
  });
  expect(worst).toBeLessThan(0.001);
  // Lithium is not charged for speed, whatever is typed in.
  expect(peukertFactorAt(bank({ peukertExponent: 1.05 }), 80)).toBe(1);
});

test("in the cold less can be drawn and lithium takes no charge", () => {
  // Ranges of makers' manuals: 0.80–0.90 of capacity at 0 °C and 0.50–0.70 at −20 °C (LFP); no charge below 0 °C, 0.1C to 5 °C.
  const usable = (chemistry: string, tempC: number) => 1 - bank({ chemistry }, tempC).floorAh[0]! / 100;
  expect(usable("lfp", 25)).toBe(1);
  expect(usable("lfp", 0)).toBeGreaterThanOrEqual(0.8);
  expect(usable("lfp", 0)).toBeLessThanOrEqual(0.9);
  expect(usable("lfp", -20)).toBeGreaterThanOrEqual(0.5);
  expect(usable("lfp", -20)).toBeLessThanOrEqual(0.7);
  expect(usable("agm", 0)).toBeGreaterThanOrEqual(0.8);
  expect(usable("agm", 0)).toBeLessThanOrEqual(0.85);
  expect(bank({}, -1).maxChargeA[0]).toBe(0);
  expect(bank({}, 0).maxChargeA[0]).toBe(0);
  expect(bank({}, 3).maxChargeA[0]).toBe(10);
  expect(bank({}, 8).maxChargeA[0]).toBe(20);
  expect(bank({}, 20).maxChargeA[0]).toBe(50);
  expect(bank({ chemistry: "agm" }, -5).maxChargeA[0]).toBeGreaterThan(0);
});

test("a current is the one that gives the power at the terminals", () => {
  const amps = drawA(12.8, 0.02, 200);
  expect(amps * (12.8 - 0.02 * amps)).toBeCloseTo(200, 9);
  expect(drawA(12.8, 0.02, 1e9)).toBeCloseTo(12.8 / 0.04, 9);
});

test("every chemistry's curve runs from empty to full without falling", () => {
  for (const data of Object.values(CHEMISTRY_DATA)) {
    const shares = data.openCircuit.map(([share]) => share);
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBe(1);
    for (let p = 1; p < data.openCircuit.length; p++) {
      expect(data.openCircuit[p]![1]).toBeGreaterThan(data.openCircuit[p - 1]![1]);
    }
  }
});
