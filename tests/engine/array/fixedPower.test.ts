import fc from "fast-check";
import { expect, test } from "vitest";
import { makeDomeLight } from "../../../engine/array/domeLight.ts";
import { makeFixedPower } from "../../../engine/array/fixedPower.ts";
import { PLANE_SLOTS } from "../../../engine/array/planeSlots.ts";
import { stepDome } from "../../../engine/array/stepDome.ts";
import { stepGroup } from "../../../engine/array/stepGroup.ts";
import { stepPlane } from "../../../engine/array/stepPlane.ts";
import { panelGroup, perfect, preparedAt, steadyLight } from "./oneGroup.ts";

const LOWEST_V = 9;
const HIGHEST_V = 14.6;

test("power is settled without the bank only where no volts of a bank would change it", () => {
  const met = { settled: 0, left: 0 };
  fc.assert(
    fc.property(
      fc.record({
        vmpV: fc.double({ min: 12, max: 22, noNaN: true }), // some stand above any bank, some do not
        maxChargeA: fc.option(fc.double({ min: 3, max: 12, noNaN: true })), // some are reached, some are not
        beamWm2: fc.double({ min: 50, max: 1100, noNaN: true }),
        kind: fc.constantFrom("mppt" as const, "pwm" as const),
        at: fc.constantFrom("bank" as const, "panels" as const),
        stepDownOnly: fc.boolean(),
      }),
      ({ vmpV, maxChargeA, beamWm2, kind, at, stepDownOnly }) => {
        const cable = { awg: "10" as const, oneWayM: 4, tempC: 25 };
        const group = preparedAt(
          panelGroup({
            module: { ratedW: 100, vmpV, vocV: vmpV * 1.2, bypassSections: 2 },
            controller: perfect({ kind, at, stepDownOnly, maxChargeA, cable }),
          }),
          [{ sunAzimuthDeg: 180, sunElevationDeg: 90 }],
        );
        const plane = new Float64Array(PLANE_SLOTS);
        const fixed = makeFixedPower(1, LOWEST_V, HIGHEST_V);
        const light = makeDomeLight(group.dome.transposition, 1, 1);
        stepDome(group.dome, steadyLight(1, beamWm2, beamWm2, 0), Float64Array.of(20), light, 0);
        stepPlane(group, 0, light, 1, plane, fixed, true);
        if (fixed.coupled[0] !== 0) {
          met.left++;
          return;
        }
        met.settled++;
        for (const busV of [LOWEST_V, 11, 12.8, HIGHEST_V]) {
          const found = Float64Array.of(busV, 0);
          stepGroup(group, 0, 0, 0, plane.slice(), found, 0, found, 1, fixed);
          expect(found[1]).toBe(fixed.sumW[0]);
        }
      },
    ),
    { numRuns: 1000, seed: 20261012 },
  );
  expect(met.settled).toBeGreaterThan(100);
  expect(met.left).toBeGreaterThan(100);
});
