import { expect, test } from "vitest";
import { boxWarmth, heatCapacityWhPerK } from "../../../engine/bank/boxWarmth.ts";
import { Bank, type BankBox } from "../../../engine/scenario/bank.ts";
import { plainInput, readPlain, traceInput } from "../../truth/run/plainScenario.ts";

const bank = Bank.parse({ chemistry: "lfp", blockAh: 100, startShare: 1, reserveShare: 0.2 });
const steady = (airC: number, steps: number) => new Float64Array(steps).fill(airC);
const box = (parts: Partial<BankBox> = {}): BankBox => ({ lossWPerK: 0.5, heatCapacityWhPerK: 3.3, ...parts });

test("a warm bank cools as Newton's law says, whatever the step", () => {
  // τ = 3.3 Wh/K ÷ 0.5 W/K = 6.6 h: after that time 1/e of 30 K is left over −10 °C.
  for (const stepH of [1 / 6, 1, 3.3]) {
    const steps = Math.round(6.6 / stepH);
    const { tempC, heaterW } = boxWarmth(bank, box({ startC: 20 }), steady(-10, steps + 1), stepH);
    // The step's mean, halfway between its ends.
    const at = (hours: number) => -10 + 30 * Math.exp(-hours / 6.6);
    expect(tempC[steps]).toBeCloseTo((at(steps * stepH) + at((steps + 1) * stepH)) / 2, 5);
    expect(Math.max(...heaterW)).toBe(0);
  }
  // It begins as warm as the air where nothing is said.
  expect(boxWarmth(bank, box(), steady(-10, 3), 1).tempC[0]).toBeCloseTo(-10, 9);
});

test("a pad holds its set point with what the box loses, and falls short where it has less", () => {
  const held = boxWarmth(bank, box({ startC: 5, heater: { drawW: 20, setC: 5 } }), steady(-10, 48), 1);
  for (const watts of held.heaterW) expect(watts).toBeCloseTo(0.5 * 15, 5);
  for (const temp of held.tempC) expect(temp).toBeCloseTo(5, 5);
  const weak = boxWarmth(bank, box({ startC: 5, heater: { drawW: 5, setC: 5 } }), steady(-10, 200), 1);
  expect(weak.heaterW.at(-1)).toBe(5);
  expect(weak.tempC.at(-1)).toBeCloseTo(-10 + 5 / 0.5, 3);
  // From cold the pad gives all it has until the bank is there; on a warm day nothing.
  const rising = boxWarmth(bank, box({ startC: -10, heater: { drawW: 20, setC: 5 } }), steady(-10, 48), 1);
  expect(rising.heaterW[0]).toBe(20);
  expect(rising.heaterW.at(-1)).toBeCloseTo(7.5, 5);
  expect(
    Math.max(...boxWarmth(bank, box({ startC: 5, heater: { drawW: 20, setC: 5 } }), steady(8, 9), 1).heaterW),
  ).toBe(0);
});

test("heat is kept account of: the pad's is what left and what stayed", () => {
  const air = Float64Array.from({ length: 240 }, (_, i) => -12 + 8 * Math.sin(i / 23));
  const { heaterW } = boxWarmth(bank, box({ startC: 2, heater: { drawW: 12, setC: 3 } }), air, 0.1);
  // Followed by hand in steps a hundred times finer.
  let tempC = 2;
  let lostWh = 0;
  for (let i = 0; i < 24_000; i++) {
    const watts = heaterW[Math.floor(i / 100)]!;
    const loss = 0.5 * (tempC - air[Math.floor(i / 100)]!);
    lostWh += loss * 0.001;
    tempC += ((watts - loss) * 0.001) / 3.3;
  }
  const givenWh = heaterW.reduce((sum, watts) => sum + watts * 0.1, 0);
  expect(givenWh).toBeGreaterThan(50);
  expect(givenWh).toBeCloseTo(lostWh + 3.3 * (tempC - 2), 1);
});

test("a bank's warmth goes by its size where nobody says", () => {
  const two = Bank.parse({
    chemistry: "agm",
    nominalV: 24,
    inSeries: 2,
    blockAh: 50,
    startShare: 1,
    reserveShare: 0.2,
  });
  expect(heatCapacityWhPerK(bank, box({ heatCapacityWhPerK: undefined }))).toBeCloseTo(3.3, 9);
  expect(heatCapacityWhPerK(two, box({ heatCapacityWhPerK: undefined }))).toBeCloseTo(7.5, 9);
});

test("in frost the pad is a load that the ledger names, and lithium takes charge again", () => {
  const parts = (banked: object) =>
    plainInput({
      weather: { kind: "clear", air: { maxC: -6, minC: -16 } },
      panels: [
        {
          ...{ id: "p", name: "P", count: 1, module: { ratedW: 200 } },
          ...{ mount: { kind: "fixed", tiltDeg: 60, azimuthDeg: 180 }, at: { eastM: 0, northM: 0, heightM: 1 } },
        },
      ],
      bank: { chemistry: "lfp", blockAh: 100, startShare: 0.5, reserveShare: 0.2, ...banked },
    });
  const frozen = traceInput(parts({}));
  expect(Math.max(...frozen.record.bankA)).toBeLessThanOrEqual(0);
  const warm = traceInput(parts({ box: { lossWPerK: 0.4, startC: 10, heater: { drawW: 25, setC: 8 } } }));
  expect(Math.min(...warm.prepared.bank.tempC)).toBeGreaterThan(7);
  expect(Math.max(...warm.record.bankA)).toBeGreaterThan(5);
  const pad = warm.prepared.loads.devices.find(({ id }) => id === "bank/heater")!;
  expect(pad.name).toMatch(/pad/);
  // 0.4 W/K over 19 K: 7.6 W in the mean.
  const meanW = pad.alwaysW.reduce((sum, watts) => sum + watts, 0) / pad.alwaysW.length;
  expect(meanW).toBeGreaterThan(6);
  expect(meanW).toBeLessThan(9);
});

test("a box beside a fixed temperature is refused", () => {
  const both = {
    chemistry: "lfp",
    blockAh: 100,
    startShare: 1,
    reserveShare: 0.2,
    temperature: 8,
    box: { lossWPerK: 0.4 },
  };
  expect(() => readPlain(plainInput({ bank: both as never }))).toThrow(/temperature is 8 °C; leave one of the two out/);
});
