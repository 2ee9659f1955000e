import { expect, test } from "vitest";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { traceInput } from "../truth/run/plainScenario.ts";

/**
 * 15 April: the equation of time is nearly 0 (Spencer 1971: −0.1 min) and so, on the meridian of Greenwich, the day is the same before and after
 * 12:00 UTC except for what the sun's declination moves. In air that stays the same, nothing else tells east from west.
 */
function plan(azimuthDeg: number, eastM: number, stepDownOnly: boolean): ScenarioInput {
  return {
    format: "duskline-scenario",
    version: 1,
    name: "Mirrored",
    place: { name: "Nowhere (invented)", latitudeDeg: 47, longitudeDeg: 0, elevationM: 300, zone: "Etc/UTC" },
    time: { start: "2026-04-15T00:00", end: "2026-04-16T00:00", stepMinutes: 10 },
    weather: { kind: "clear", air: { maxC: 20, minC: 20 }, windMs: 1 },
    bank: { chemistry: "lfp", blockAh: 100, startShare: 0.5, reserveShare: 0.2, temperature: 20 },
    gear: [{ id: "steady", name: "steady load", working: { drawW: 20 }, use: { when: "always" } }],
    panels: [
      {
        id: "panel",
        name: "panel",
        count: 1,
        at: { eastM: 0, northM: 0, heightM: 1 },
        // A module of few volts: warm, it stands little above the bank.
        module: { ratedW: 80, vmpV: 16.8, vocV: 20.5 },
        mount: { kind: "fixed", tiltDeg: 40, azimuthDeg },
        controller: { kind: "mppt", stepDownOnly, cable: { awg: "10", oneWayM: 3 } },
      },
    ],
    obstacles: [
      {
        kind: "tree",
        id: "tree",
        eastM,
        northM: -4,
        heightM: 9,
        crownBaseM: 2,
        crownRadiusM: 2,
        transmittanceInLeafShare: 0.2,
      },
    ],
  };
}
const offeredWh = (input: ScenarioInput) => {
  const { record, prepared } = traceInput(input);
  return record.solarW.reduce((sum, watts) => sum + watts, 0) * prepared.grid.stepH;
};

test("a plan and its east–west mirror image bring the same", () => {
  const [east, west] = [offeredWh(plan(120, 6, false)), offeredWh(plan(240, -6, false))];
  expect(east).toBeGreaterThan(150);
  expect(Math.abs(east / west - 1)).toBeLessThan(0.004);
});

test("so they do where the controller only steps down and the string's volts lie near the bank's: it passes through", () => {
  const shaded = (stepDownOnly: boolean) => {
    const parts = [plan(120, 6, stepDownOnly), plan(240, -6, stepDownOnly)].map((input) => {
      const module = { ...input.panels![0]!.module, vmpV: 14.6, vocV: 18 };
      return offeredWh({ ...input, panels: [{ ...input.panels![0]!, module }] });
    });
    return Math.abs(parts[0]! / parts[1]! - 1);
  };
  expect(shaded(false)).toBeLessThan(0.004);
  expect(shaded(true)).toBeLessThan(0.004);
});
