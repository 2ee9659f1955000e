import fc from "fast-check";
import { expect, test } from "vitest";
import { peukertFactorAt } from "../../engine/bank/bankVoltage.ts";
import { traceInput } from "../truth/run/plainScenario.ts";
import { arbitraryScenario } from "./arbitraryScenario.ts";

const RUNS = { numRuns: 150, seed: 20261008 };

test("in every step of every run energy in is energy out", () => {
  fc.assert(
    fc.property(arbitraryScenario, (input) => {
      const { prepared, record } = traceInput(input);
      const { steps } = prepared.grid;
      for (let i = 0; i < steps; i++) {
        const sources = prepared.sources.reduce((sum, _, s) => sum + record.sourceW[s * steps + i]!, 0);
        const inW = record.solarW[i]! - record.spilledW[i]! + sources + Math.max(0, -record.bankW[i]!);
        const outW = record.servedW[i]! + Math.max(0, record.bankW[i]!);
        expect(Math.abs(inW - outW)).toBeLessThanOrEqual(1e-9 * Math.max(1, inW));
      }
    }),
    RUNS,
  );
});

test("what the bank holds follows from its current, and its volts times amperes are its watts", () => {
  fc.assert(
    fc.property(arbitraryScenario, (input) => {
      const { prepared, record, bankLossW } = traceInput(input);
      const { bank, grid } = prepared;
      for (let i = 0; i < grid.steps; i++) {
        const amps = record.bankA[i]!;
        const gained = amps > 0 ? amps * bank.coulombicShare : amps * peukertFactorAt(bank, -amps);
        const change = record.storedAh[i + 1]! - record.storedAh[i]!;
        // A bank that is emptied within the step gives its current for part of it, at that current's Peukert factor.
        const emptied = amps < 0 && Math.abs(record.storedAh[i + 1]! - bank.floorAh[i]!) < 1e-9;
        if (emptied) expect(change).toBeLessThanOrEqual(gained * grid.stepH + 1e-7);
        else expect(change).toBeCloseTo(gained * grid.stepH, 7);
        // A bank that cannot give what is asked for gives its greatest power.
        expect(Math.abs(amps * record.bankV[i]! - record.bankW[i]!)).toBeLessThan(
          1e-6 * Math.max(1, Math.abs(record.bankW[i]!)),
        );
        // It never gives back more than was put in: losses are losses (the curve's bend costs a hair of accuracy).
        expect(bankLossW[i]!).toBeGreaterThan(-0.002 * Math.abs(record.bankW[i]!) - 0.01);
      }
    }),
    RUNS,
  );
});

test("between the panels and the bank nothing is lost without a name", () => {
  fc.assert(
    fc.property(arbitraryScenario, (input) => {
      const { prepared, details } = traceInput(input);
      for (const detail of details) {
        for (let i = 0; i < prepared.grid.steps; i++) {
          const named =
            detail.lossesW[i]! +
            detail.cableLossW[i]! +
            detail.controllerLossW[i]! +
            detail.limitedW[i]! +
            detail.busW[i]!;
          expect(Math.abs(detail.dcW[i]! - named)).toBeLessThanOrEqual(1e-9 * Math.max(1, detail.dcW[i]!));
          expect(detail.planeWm2[i]!).toBeLessThanOrEqual(detail.planeBeforeWm2[i]! + 1e-3);
        }
      }
    }),
    RUNS,
  );
});

test("charge stays between nothing and full, nothing is negative, nothing is not a number", () => {
  fc.assert(
    fc.property(arbitraryScenario, (input) => {
      const { prepared, record, chargeShare } = traceInput(input);
      for (const share of chargeShare) expect(share >= 0 && share <= 1).toBe(true);
      for (const values of Object.values(record)) expect(values.every(Number.isFinite)).toBe(true);
      const { solarW, spilledW, unservedW, servedW, sourceW, fuelL } = record;
      for (const values of [solarW, spilledW, unservedW, servedW, sourceW, fuelL]) {
        expect(values.every((value) => value >= -1e-9)).toBe(true);
      }
      for (let i = 0; i < prepared.grid.steps; i++) {
        expect(spilledLessThanSolar(record.spilledW[i]!, record.solarW[i]!)).toBe(true);
      }
    }),
    RUNS,
  );
});

function spilledLessThanSolar(spilledW: number, solarW: number): boolean {
  return spilledW <= solarW + 1e-9;
}

test("the devices add up to what is wanted", () => {
  fc.assert(
    fc.property(arbitraryScenario, (input) => {
      const { loads, grid } = traceInput(input).prepared;
      for (let i = 0; i < grid.steps; i++) {
        const sum = loads.devices.reduce((total, device) => total + device.alwaysW[i]! + device.usedW[i]!, 0);
        expect(loads.wantedW[i]!).toBeCloseTo(sum, 9);
        const sending = loads.stations.reduce((total, station) => total + station.sendingShare[i]!, 0);
        expect(sending).toBeLessThanOrEqual(loads.stations.length + 1e-12);
      }
    }),
    RUNS,
  );
});

test("stations of one interlock group never send for more than the whole of the clock", () => {
  fc.assert(
    fc.property(arbitraryScenario, (input) => {
      const locked = (input.stations ?? []).map((station) => station.interlock !== undefined);
      const { loads, grid } = traceInput(input).prepared;
      for (let i = 0; i < grid.steps; i++) {
        const sum = loads.stations.reduce((total, station, s) => total + (locked[s] ? station.sendingShare[i]! : 0), 0);
        expect(sum).toBeLessThanOrEqual(1 + 1e-12);
      }
    }),
    RUNS,
  );
});
