import { expect, test } from "vitest";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { plainInput, traceInput } from "../../truth/run/plainScenario.ts";

const always = [{ from: "00:00", to: "24:00" }];
const mains = { kind: "mains" as const, id: "mains", name: "Mains", chargerA: 5, chargeV: 16, available: always };
const van = { kind: "vehicle" as const, id: "van", name: "Van", outputA: 20, chargeV: 16, running: always };
const emptyish = { chemistry: "lfp" as const, blockAh: 2000, startShare: 0.2, reserveShare: 0, temperature: 25 };
const roof = {
  id: "roof",
  name: "Roof",
  count: 2,
  module: { ratedW: 100 },
  mount: { kind: "flat" as const },
  at: { eastM: 0, northM: 0, heightM: 1 },
};

function run(parts: Partial<ScenarioInput>) {
  return traceInput(
    plainInput({ time: { start: "2026-06-12T00:00", end: "2026-06-13T00:00", stepMinutes: 60 }, ...parts }),
  );
}

test("with either, only the larger input passes, and what the sun offered besides is spilled", () => {
  const selector = { mode: "either" as const, inputs: ["solar", "mains", "van"] };
  const { record, prepared } = run({ bank: emptyish, sources: [mains, van], panels: [roof], selector });
  const { steps } = prepared.grid;
  for (let i = 0; i < steps; i++) {
    expect(record.sourceW[i]).toBe(0); // 5 A are always less than 20 A
    expect(record.sourceW[steps + i]).toBeGreaterThan(200); // and 200 W of panels less than both
    expect(record.spilledW[i]).toBe(record.solarW[i]);
  }
  expect(Math.max(...record.solarW)).toBeGreaterThan(50);
  const both = run({ bank: emptyish, sources: [mains, van], panels: [roof], selector: { mode: "both" } });
  expect(Math.min(...both.record.sourceW)).toBeGreaterThan(50);
  expect(Math.max(...both.record.spilledW)).toBe(0);
});

test("with either, the sun shuts a smaller charger out at noon and is shut out at night", () => {
  const { record } = run({ bank: emptyish, sources: [mains], panels: [roof], selector: { mode: "either" } });
  const noon = 12;
  expect(record.solarW[noon]).toBeGreaterThan(70);
  expect([record.sourceW[noon], record.spilledW[noon]]).toEqual([0, 0]);
  expect(record.sourceW[0]).toBeGreaterThan(60);
});

const heater = { id: "heater", name: "Heater", working: { drawW: 100 }, use: { when: "always" as const } };

test("loads that were cut come back at the reconnect volts and not before", () => {
  const bank = { ...emptyish, blockAh: 40, startShare: 0.3, disconnectV: 12 };
  const parts = { gear: [heater], sources: [{ ...mains, available: [{ from: "12:00", to: "24:00" }] }] };
  const low = run({ ...parts, bank: { ...bank, reconnectV: 12.6 } }).record.connected;
  const never = run({ ...parts, bank: { ...bank, reconnectV: 16 } }).record.connected;
  const cut = low.indexOf(0);
  expect(cut).toBeGreaterThan(0);
  expect(cut).toBeLessThan(12);
  expect(low.indexOf(1, 12)).toBeGreaterThan(0);
  expect(never.indexOf(1, cut)).toBe(-1);
});

test("what the cold leaves out of reach is never drawn", () => {
  const bank = { ...emptyish, blockAh: 40, startShare: 1, temperature: -20, disconnectV: 0 };
  const { record, prepared } = run({ bank, gear: [heater] });
  // 60 % at −20 °C, so that 40 % stay.
  expect(prepared.bank.floorAh[0]! / prepared.bank.fullAh).toBeCloseTo(0.4, 5);
  expect(record.storedAh.at(-1)).toBeCloseTo(16, 4);
  expect(record.unservedW.at(-1)).toBeCloseTo(100, 6);
});

test("a bank gives no more than its discharge current; the rest goes unserved", () => {
  const { record } = run({ bank: { ...emptyish, startShare: 1, maxDischargeA: 4 }, gear: [heater] });
  expect(Math.min(...record.bankA)).toBeCloseTo(-4, 9);
  expect(record.unservedW[0]).toBeCloseTo(100 - 4 * record.bankV[0]!, 6);
});
