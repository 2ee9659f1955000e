import { expect, test } from "vitest";
import { coldFactor, coldOpenCircuitV } from "../../../engine/checks/coldOpenCircuitV.ts";
import { backfeedA, panelCircuitA, panelWireA } from "../../../engine/checks/panelCircuitA.ts";
import { record } from "../record.ts";

test("current of a panel circuit, as worked in print", () => {
  // "PV Circuit Sizing & Current Calculations", trade magazine: 8.8 A gives 11.0 A. A kit maker's manual: 9.2 A gives 11.5 A, and 14.4 A
  // for the wire. Both after NEC 690.8(A) and (B).
  const errors = [
    panelCircuitA(8.8, 1) - 11.0,
    panelCircuitA(9.2, 1) - 11.5,
    panelWireA(9.2, 1) - 14.4,
    panelCircuitA(9.2, 3) - 34.5,
  ].map(Math.abs);
  const worst = Math.max(...errors);
  record({
    what: "current that a panel circuit must stand",
    source: "NEC 690.8, two worked examples in print",
    tolerance: 0.026,
    why: "one decimal: 14.375 A is printed as 14.4",
    worst,
    unit: "A",
    n: errors.length,
  });
  expect(worst).toBeLessThan(0.026);
});

test("what other strings drive back into one: two strings 1.25 Isc of one, three of two", () => {
  // NEC 690.9(A) by hand: 10 A modules. One string has nobody beside it.
  expect([1, 2, 3, 4].map((strings) => backfeedA(10, strings))).toEqual([0, 12.5, 25, 37.5]);
});

test("open volts in the cold", () => {
  // NEC table 690.7(A) (from memory, met again in a public permit program's source) and +0.3 % a degree below 25 °C.
  const table = { 24: 1.02, 15: 1.04, 10: 1.06, 5: 1.08, 0: 1.1, "-1": 1.12, "-10": 1.14, "-20": 1.18, "-40": 1.25 };
  for (const [airC, factor] of Object.entries(table)) expect(coldFactor(Number(airC)), airC).toBe(factor);
  expect([coldFactor(25), coldFactor(30), coldFactor(-60)]).toEqual([1, 1, 1.25]);
  // Two modules of 22 V at −10 °C: by the sheet's 0.3 % 22 · (1 + 0.003 · 35) = 24.31 V each, by the table 25.08 V: the table counts.
  expect(coldOpenCircuitV(22, 2, -0.003, -10)).toBeCloseTo(2 * 25.08, 9);
  // With 0.45 % the sheet says 25.465 V and counts.
  expect(coldOpenCircuitV(22, 2, -0.0045, -10)).toBeCloseTo(2 * 25.465, 9);
  // At 35 °C, ten degrees over the sheet's 25: 22 · 0.97.
  expect(coldOpenCircuitV(22, 1, -0.003, 35)).toBeCloseTo(21.34, 9);
  expect(coldOpenCircuitV(22, 1, -0.003, 25)).toBe(22);
});
