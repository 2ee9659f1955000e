import fc from "fast-check";
import { expect, test } from "vitest";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { traceInput } from "../truth/run/plainScenario.ts";
import { arbitraryScenario } from "./arbitraryScenario.ts";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Curves that no cell has, and that the format allows: jumps, long flats, from 0.5 to 5 V. */
const curve = fc
  .array(fc.tuple(real(0.001, 0.999), real(0.5, 5)), { minLength: 0, maxLength: 6 })
  .map((inner): NonNullable<ScenarioInput["bank"]["openCircuitCurve"]> => {
    const shares = [0, ...new Set(inner.map(([share]) => share).sort((a, b) => a - b)), 1];
    const volts = [0.5, ...inner.map(([, cellV]) => cellV), 5].sort((a, b) => a - b);
    return shares.map((share, i) => ({ share, cellV: volts[i]! }));
  });

test("a bank with any curve gives no more than was put in, however long the steps", () => {
  fc.assert(
    fc.property(arbitraryScenario, curve, fc.boolean(), (input, openCircuitCurve, isHourly) => {
      const run = traceInput({
        ...input,
        obstacles: [],
        time: { ...input.time, stepMinutes: isHourly ? 60 : 30 },
        bank: { ...input.bank, openCircuitCurve, coulombicEfficiencyShare: 1, internalResistanceOhm: 0.001 },
      });
      const { record, bankLossW } = run;
      for (let i = 0; i < bankLossW.length; i++) {
        expect(bankLossW[i]!).toBeGreaterThan(-1e-5 * Math.abs(record.bankW[i]!) - 1e-6);
      }
    }),
    { numRuns: 100, seed: 20261130 },
  );
});
