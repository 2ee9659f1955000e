import fc from "fast-check";
import { expect, test } from "vitest";
import type { Trace } from "../../engine/run/trace.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { record } from "../truth/record.ts";
import { traceInput } from "../truth/run/plainScenario.ts";
import { arbitraryScenario } from "./arbitraryScenario.ts";

const RUNS = { numRuns: 60, seed: 20261010 };

function expectSame(one: Trace, other: Trace): void {
  expect(Array.from(other.record.storedAh)).toEqual(Array.from(one.record.storedAh));
  expect(Array.from(other.record.solarW)).toEqual(Array.from(one.record.solarW));
}

test("a place 360° farther east is the same place", () => {
  fc.assert(
    fc.property(arbitraryScenario, fc.double({ min: -180, max: -0.001, noNaN: true }), (input, longitudeDeg) => {
      // Eighths of a degree: adding 360 to them and taking it off again is exact.
      const lon = Math.ceil(longitudeDeg * 8) / 8;
      const at = (deg: number): ScenarioInput => ({ ...input, place: { ...input.place, longitudeDeg: deg } });
      expectSame(traceInput(at(lon)), traceInput(at(lon + 360)));
    }),
    RUNS,
  );
});

test("a scenario written in another zone is the same scenario", () => {
  fc.assert(
    fc.property(arbitraryScenario, fc.integer({ min: -11, max: 12 }), (input, offsetH) => {
      // Only what depends on the sun and not on the clock may be compared: clocks, days and months are the zone's own.
      const inZone = (hours: number): ScenarioInput => {
        const shifted = (local: string) =>
          new Date(Date.parse(`${local}Z`) + hours * 3_600_000).toISOString().slice(0, 16);
        return {
          ...input,
          place: {
            ...input.place,
            zone: hours === 0 ? "Etc/UTC" : `Etc/GMT${hours > 0 ? "-" : "+"}${Math.abs(hours)}`,
          },
          time: { ...input.time, start: shifted(input.time.start), end: shifted(input.time.end) },
          weather: { kind: "clear", air: { maxC: 20, minC: 10 } },
          gear: (input.gear ?? []).filter((thing) => thing.use.when === "always" || thing.use.when === "afterDark"),
          stations: [],
          sources: [],
          panels: (input.panels ?? []).map(({ out: _, ...group }) => ({
            ...group,
            mount: group.mount.kind === "aimed" ? { kind: "flat" } : group.mount,
          })),
        };
      };
      expectSame(traceInput(inZone(0)), traceInput(inZone(offsetH)));
    }),
    RUNS,
  );
});

test("a change of clocks inside the event makes a day of 25 hours and moves nothing else", () => {
  const common: Omit<ScenarioInput, "time" | "place"> = {
    format: "duskline-scenario",
    version: 1,
    name: "Clocks",
    weather: { kind: "clear", air: { maxC: 10, minC: 2 } },
    gear: [{ id: "router", name: "router", working: { drawW: 10 }, use: { when: "always" } }],
    panels: [
      {
        id: "roof",
        name: "roof",
        count: 1,
        module: { ratedW: 100 },
        mount: { kind: "flat" },
        at: { eastM: 0, northM: 0, heightM: 2 },
      },
    ],
    bank: { chemistry: "lfp", blockAh: 100, startShare: 0.9, reserveShare: 0.2 },
  };
  const place = { name: "Invented", latitudeDeg: 48, longitudeDeg: 11 };
  const autumn = traceInput({
    ...common,
    place: { ...place, zone: "Europe/Vienna" },
    time: { start: "2026-10-24T12:00", end: "2026-10-26T12:00" },
  });
  const inUtc = traceInput({
    ...common,
    place: { ...place, zone: "Etc/UTC" },
    time: { start: "2026-10-24T10:00", end: "2026-10-26T11:00" },
  });
  expectSame(autumn, inUtc);
  expect(autumn.days.map((day) => day.hours)).toEqual([12, 25, 12]);
  const spring = traceInput({
    ...common,
    place: { ...place, zone: "Europe/Vienna" },
    time: { start: "2026-03-28T12:00", end: "2026-03-30T12:00" },
  });
  expect(spring.days.map((day) => day.hours)).toEqual([12, 23, 12]);
  // The lowest hour is told on the clock that people had.
  expect(autumn.verdict.lowestAt.date).toMatch(/^2026-10-2[456]$/);
});

test("doubling the step moves a day's energy and the lowest charge by little", () => {
  let worstEnergy = 0;
  let worstCharge = 0;
  fc.assert(
    fc.property(arbitraryScenario, (input) => {
      // Two whole days and a bank of usual size for its panels; what switches on charge is a jump at any step length.
      const start = `${input.time.start.slice(0, 10)}T00:00`;
      const end = new Date(Date.parse(`${start}Z`) + 2 * 86_400_000).toISOString().slice(0, 16);
      const at = (stepMinutes: 5 | 10): ScenarioInput => ({
        ...input,
        time: { start, end, stepMinutes },
        sources: [],
        panels: (input.panels ?? []).map((group) => ({
          ...group,
          module: { ...group.module, wiring: "area" },
          controller: { ...group.controller, kind: "mppt", stepDownOnly: false },
        })),
        bank: { ...input.bank, blockAh: 200, disconnectV: 0, reconnectV: 0, temperature: 20, startShare: 0.7 },
      });
      const fine = traceInput(at(5));
      const coarse = traceInput(at(10));
      const ratedW = (input.panels ?? []).reduce((sum, group) => sum + group.count * group.module.ratedW, 0);
      fine.days.forEach((day, d) => {
        // Against what the panels give in one hour of full sun: a dark day has no energy to compare with.
        if (ratedW > 0) worstEnergy = Math.max(worstEnergy, Math.abs(coarse.days[d]!.solarWh - day.solarWh) / ratedW);
      });
      worstCharge = Math.max(worstCharge, Math.abs(coarse.verdict.lowestShare - fine.verdict.lowestShare));
    }),
    RUNS,
  );
  record({
    what: "step of 10 min against 5 min, random scenarios with shade: a day's energy",
    source: "the engine against itself",
    tolerance: 0.05,
    why: "the edge of a shadow falls anywhere inside a step",
    worst: worstEnergy,
    unit: "h of full sun",
    n: 2 * RUNS.numRuns,
  });
  record({
    what: "step of 10 min against 5 min, random scenarios with shade: lowest charge",
    source: "the engine against itself",
    tolerance: 0.01,
    why: "follows from the energy, on a bank of 200 Ah",
    worst: worstCharge,
    unit: "of full",
    n: RUNS.numRuns,
  });
  expect(worstEnergy).toBeLessThan(0.05);
  expect(worstCharge).toBeLessThan(0.01);
});
