import { expect, test } from "vitest";
import { timeGrid } from "../../../engine/scenario/timeGrid.ts";
import { prepareSources } from "../../../engine/source/prepareSources.ts";
import { plainInput, readPlain, traceInput } from "../../truth/run/plainScenario.ts";

const HOUR = { from: "10:00", to: "11:00" };

/** 500 W at the shaft, 0.8 of it at the bank: 400 W, for 0.7 L an hour. */
const generator = {
  kind: "generator" as const,
  id: "generator",
  name: "Generator",
  continuousW: 500,
  chargerA: 100,
  chargerEfficiencyShare: 0.8,
  chargeV: 16, // far above the bank, so that nothing tapers
  allowed: [HOUR],
  startShare: 0.5,
  stopShare: 0.9,
  burnIdleLPerH: 0.3,
  burnFullLPerH: 0.7,
  fuelL: 10,
};

function run(changes: Partial<typeof generator> = {}, startShare = 0.3, stepMinutes: 10 | 30 | 60 = 10) {
  const { record, prepared } = traceInput(
    plainInput({
      time: { start: "2026-06-12T06:00", end: "2026-06-12T20:00", stepMinutes },
      bank: { chemistry: "lfp", blockAh: 200, startShare, reserveShare: 0.1, temperature: 25 },
      sources: [{ ...generator, ...changes }],
    }),
  );
  const { stepH } = prepared.grid;
  const wh = record.sourceW.reduce((sum, watts) => sum + watts * stepH, 0);
  const litres = record.fuelL.reduce((sum, litre) => sum + litre, 0);
  return { wh, litres, record, prepared };
}

test("an hour at full power gives what the charger passes on and burns what the sheet says", () => {
  const { wh, litres } = run();
  expect(wh).toBeCloseTo(400, 6);
  expect(litres).toBeCloseTo(0.7, 9);
});

test("a stretch that cuts a step counts in part, fuel and all", () => {
  const { wh, litres } = run({ allowed: [{ from: "10:00", to: "10:45" }] }, 0.3, 30);
  expect(wh).toBeCloseTo(300, 6);
  expect(litres).toBeCloseTo(0.525, 9);
});

test("half the fuel gives half the energy, and no more is burnt than there was", () => {
  const { wh, litres } = run({ fuelL: 0.35 });
  expect(wh).toBeCloseTo(200, 6);
  expect(litres).toBeCloseTo(0.35, 9);
});

test("idling burns fuel too: with little to do it is nearly all idling", () => {
  // 2 A are some 27 W of the 400.
  const { wh, litres } = run({ chargerA: 2 });
  expect(litres).toBeCloseTo(0.3 + (0.4 * wh) / 400, 9);
  expect(wh).toBeLessThan(30);
});

test("it starts at its start charge and not above, and goes on to its stop charge", () => {
  const all = [{ from: "00:00", to: "24:00" }];
  expect(run({ allowed: all }, 0.5).wh).toBeGreaterThan(0);
  expect(run({ allowed: all }, 0.501).wh).toBe(0);
  const { record, prepared } = run({ allowed: all, stopShare: 0.6 });
  const last = record.sourceW.findLastIndex((watts) => watts > 0);
  const share = (step: number) => record.storedAh[step]! / prepared.bank.fullAh;
  expect(share(last)).toBeLessThan(0.6);
  expect(share(last + 1)).toBeGreaterThanOrEqual(0.6);
  expect(share(last + 1)).toBeLessThan(0.62);
});

test("each kind is prepared with its own current, hours and volts", () => {
  const read = readPlain(
    plainInput({
      time: { start: "2026-06-12T10:00", end: "2026-06-12T12:00", stepMinutes: 60 },
      sources: [
        { kind: "mains", id: "mains", name: "Mains", chargerA: 20, available: [HOUR] },
        {
          kind: "vehicle",
          id: "van",
          name: "Van",
          outputA: 30,
          chargeV: 13.9,
          running: [{ from: "11:00", to: "12:00" }],
        },
      ],
    }),
  );
  const grid = timeGrid(read.time, "Etc/UTC");
  if (!grid.ok) throw new Error("no grid");
  const [mains, van] = prepareSources(read.sources, grid.grid, 14.2);
  expect([mains!.maxA, mains!.chargeV, [...mains!.availableShare]]).toEqual([20, 14.2, [1, 0]]);
  expect([van!.maxA, van!.chargeV, [...van!.availableShare]]).toEqual([30, 13.9, [0, 1]]);
});
