import { expect, test } from "vitest";
import { openCircuitV } from "../../../engine/bank/bankVoltage.ts";
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
  const bank = { ...emptyish, blockAh: 40, startShare: 1, temperature: -19.9, disconnectV: 0 };
  const { record, prepared } = run({ bank, gear: [heater] });
  // 60 % at −20 °C, so that 40 % stay.
  expect(prepared.bank.floorAh[0]! / prepared.bank.fullAh).toBeCloseTo(0.4, 2);
  expect(record.storedAh.at(-1)).toBeCloseTo(prepared.bank.floorAh[0]!, 4);
  expect(record.unservedW.at(-1)).toBeCloseTo(100, 6);
});

test("a bank that the cold has locked gives nothing and feeds nobody, and thaws as it was", () => {
  const bank = { ...emptyish, blockAh: 400, startShare: 0.9, temperature: "air" as const, maxDischargeA: 100 };
  const weather = { kind: "clear" as const, air: { maxC: -10, minC: -30 } };
  const station = {
    ...{
      id: "a",
      name: "A",
      transmitW: 10,
      sendingShare: 0.2,
      staffed: always,
      modes: [{ mode: "fm" as const, share: 1 }],
    },
    radio: { ratedW: 10, receive: { drawW: 5 }, fullPower: { drawW: 30 } },
  };
  const { record, prepared } = run({ bank, weather, gear: [heater], panels: [roof], stations: [station] });
  const isLocked = (i: number) => prepared.bank.tempC[i]! <= -20;
  const steps = Array.from({ length: prepared.grid.steps }, (_, i) => i);
  expect(steps.filter(isLocked).length).toBeGreaterThan(4);
  expect(steps.filter((i) => !isLocked(i)).length).toBeGreaterThan(4);
  for (const i of steps) {
    if (isLocked(i)) {
      expect(record.bankA[i]).toBeCloseTo(0, 12);
      expect(record.servedW[i]).toBeLessThan(0.31); // the controller's own draw, from the panels
      expect(record.radioV[i]).toBe(0);
      expect(record.connected[i]).toBe(0);
    } else {
      expect(record.unservedW[i]).toBeCloseTo(0, 9);
      expect(record.radioV[i]).toBeGreaterThan(10);
    }
  }
});

test("the volts under a load are those of the resistance at that charge and in that cold", () => {
  const bank = { ...emptyish, startShare: 0.8, internalResistanceOhm: 0.02, disconnectV: 0 };
  const at = (temperature: number) => run({ bank: { ...bank, temperature }, gear: [heater] });
  const sagV = (temperature: number) => {
    const { record, prepared } = at(temperature);
    const halfAh = (record.storedAh[0]! + record.storedAh[1]!) / 2;
    return openCircuitV(prepared.bank, halfAh) - record.bankV[0]!;
  };
  // 16 mΩ that stay and 4 mΩ of cells, 0.92 of it at this charge; Arrhenius with 3800 K by hand: 7.62 at −15 °C, 3.21 at 0 °C.
  const amps = (temperature: number) => -at(temperature).record.bankA[0]!;
  expect(sagV(25) / amps(25)).toBeCloseTo(0.016 + 0.004 * 0.92, 5);
  expect(sagV(0) / amps(0)).toBeCloseTo(0.016 + 0.004 * 0.92 * 3.211, 4);
  expect(sagV(-15) / amps(-15)).toBeCloseTo(0.016 + 0.004 * 0.92 * 7.204, 4);
});

test("cold lead takes less, at volts that still end at absorption", () => {
  const at = (temperature: number, startShare: number) => {
    const bank = { ...emptyish, chemistry: "agm" as const, blockAh: 100, startShare, maxChargeA: 25, temperature };
    const big = { ...mains, chargerA: 60, chargeV: 16 };
    const { record, prepared } = run({ bank, sources: [big] });
    return { amps: record.bankA[0]!, volts: record.bankV[0]!, prepared };
  };
  // Half full and warm it takes all that it may; near full what the taper leaves, and in the cold its part of that.
  expect(at(25, 0.5).amps).toBeCloseTo(25, 0);
  const [warm, cold] = [at(25, 0.8), at(0, 0.8)];
  expect(cold.amps / warm.amps).toBeCloseTo(cold.prepared.bank.acceptShare[0]!, 1);
  expect(cold.amps / warm.amps).toBeLessThan(0.65);
  for (const share of [0.5, 0.7, 0.8, 0.9, 0.98]) {
    for (const temperature of [25, 0, -15]) expect(at(temperature, share).volts).toBeLessThan(14.61);
  }
  // At one current the cold bank shows more volts: 10 A at half charge, by hand 12.06 + (0.45 + 10 × 0.034) × 1.625 = 13.34 V at 0 °C.
  const held = (temperature: number) => {
    const bank = { ...emptyish, chemistry: "agm" as const, blockAh: 1000, startShare: 0.5, temperature };
    return run({ bank, sources: [{ ...mains, chargerA: 100, chargeV: 16 }] }).record;
  };
  expect(held(0).bankV[0]! - held(25).bankV[0]!).toBeGreaterThan(0.4);
  expect(held(0).bankV[0]!).toBeCloseTo(13.4, 1);
});

test("a bank gives no more than its discharge current; the rest goes unserved", () => {
  const { record } = run({ bank: { ...emptyish, startShare: 1, maxDischargeA: 4 }, gear: [heater] });
  expect(Math.min(...record.bankA)).toBeCloseTo(-4, 9);
  expect(record.unservedW[0]).toBeCloseTo(100 - 4 * record.bankV[0]!, 6);
});
