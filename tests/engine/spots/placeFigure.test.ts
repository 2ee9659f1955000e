import fc from "fast-check";
import { expect, test } from "vitest";
import { ledger } from "../../../engine/run/ledger.ts";
import { prepare } from "../../../engine/run/prepare.ts";
import { type Trace, tracePrepared } from "../../../engine/run/trace.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { SKY_ROWS } from "../../../engine/shade/skyViewShare.ts";
import { placeFigures } from "../../../engine/spots/placeFigure.ts";
import { spotChanges } from "../../../engine/spots/spotChanges.ts";
import { arbitraryScenario } from "../../promise/arbitraryScenario.ts";

function read(document: unknown): Scenario {
  const found = readScenario(document);
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.scenario;
}

function prepared(scenario: Scenario) {
  const ready = prepare(scenario);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.prepared;
}

/** What the scenario made of a place gives: by way of its document, read and run from scratch; null where something stands there. */
function runThere(
  document: ScenarioInput,
  g: number,
  at: { eastM: number; northM: number; leadM: number },
): Trace | null {
  const changes = spotChanges(read(document).panels[g]!, at, document);
  const changed = applyChanges(document, changes);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  const found = readScenario(changed.document);
  if (!found.ok && found.problems.every(({ code }) => code === "panel-inside")) return null;
  return tracePrepared(prepared(read(changed.document)));
}

const place = fc.record({
  eastM: fc.integer({ min: -20, max: 20 }),
  northM: fc.integer({ min: -20, max: 20 }),
  leadM: fc.integer({ min: 1, max: 60 }),
});

test("a place's figure is what a scenario with the group there gives, in random plans", () => {
  let looked = 0;
  fc.assert(
    fc.property(arbitraryScenario, place, fc.nat(), (document, at, pick) => {
      const scenario = read(document);
      if (scenario.panels.length === 0) return;
      const g = pick % scenario.panels.length;
      const figureAt = placeFigures(prepared(scenario), g);
      const trace = runThere(document, g, at);
      if (trace === null) return;
      const { offeredWh } = ledger(trace).harvest[g]!;
      // As finely looked at as a run does, it is the run's own.
      expect(figureAt(at, SKY_ROWS).eventWh).toBeCloseTo(offeredWh, 6);
      // A third of the rows: 1 % is promised; half a watt-hour is as good as nothing.
      expect(Math.abs(figureAt(at).eventWh - offeredWh)).toBeLessThan(0.01 * offeredWh + 0.5);
      // The event has no whole day, or the mean over those is what is said.
      const whole = trace.days.filter(({ hours }) => hours >= 24);
      const groupWh = trace.days.map((day) => day.groupWh[g]!);
      const day = whole.length > 0 ? whole.reduce((sum, each) => sum + each.groupWh[g]!, 0) / whole.length : offeredWh;
      expect(figureAt(at, SKY_ROWS).dayWh, String(groupWh)).toBeCloseTo(day, 6);
      if (offeredWh > 1) looked++;
    }),
    { numRuns: 24, seed: 15 },
  );
  expect(looked).toBeGreaterThan(8);
});

test("what a lead loses is what a run with none would give more", () => {
  const document = wallAt45();
  const figureAt = placeFigures(prepared(read(document)), 0);
  const at = { eastM: 0, northM: 9, leadM: 40 };
  const wh = (leadM: number) => ledger(runThere(document, 0, { ...at, leadM })!).harvest[0]!.offeredWh;
  expect(figureAt(at, SKY_ROWS).leadLossShare).toBeCloseTo(1 - wh(40) / wh(0), 9);
  expect(figureAt(at).leadLossShare).toBeGreaterThan(0.005);
  expect(figureAt({ ...at, leadM: 0 }).leadLossShare).toBe(0);
});

/** 45° north at the March equinox, under a clear sky: a wall 4 m high and very long from west to east, small panels on the ground north of it. */
function wallAt45(): ScenarioInput {
  return {
    format: "duskline-scenario",
    version: 1,
    name: "Behind a wall",
    place: { name: "Nowhere", latitudeDeg: 45, longitudeDeg: 0, elevationM: 0, zone: "UTC" },
    time: { start: "2026-03-20T00:00", end: "2026-03-21T00:00", stepMinutes: 10 },
    weather: { kind: "clear", air: { maxC: 10, minC: 10 } },
    panels: [
      {
        id: "field",
        name: "Field",
        count: 1,
        module: { ratedW: 100, lengthM: 0.05, widthM: 0.05 },
        mount: { kind: "flat" },
        at: { eastM: 0, northM: 30, heightM: 0.02 },
        controller: { cable: { awg: "10", oneWayM: 5 } },
      },
    ],
    obstacles: [
      { kind: "box", id: "wall", eastM: 0, northM: -0.05, heightM: 4.02, lengthM: 300, widthM: 0.1, headingDeg: 90 },
    ],
    bank: { chemistry: "lfp", blockAh: 1000, startShare: 0.5, reserveShare: 0.2 },
  } as unknown as ScenarioInput;
}

/**
 * At an equinox the sun goes round in the plane of the equator, so that the shadow of an edge that runs from west to east lies all day on one
 * line, its height × tan(latitude) away: the straight equinoctial line of a sundial.
 * @see R. Rohr, Sundials: History, Theory, and Practice, 1970 (from memory)
 */
test("behind a wall at an equinox the sun comes all day beyond the equinoctial line and never within it", () => {
  const figureAt = placeFigures(prepared(read(wallAt45())), 0);
  const lineM = 4 * Math.tan((45 * Math.PI) / 180);
  const wh = (northM: number) => figureAt({ eastM: 0, northM, leadM: 5 }).eventWh;
  const open = wh(400);
  // The sun's path bends by a fifth of a degree over the day, and the wall hides sky as well.
  expect(wh(lineM * 1.06)).toBeGreaterThan(0.85 * open);
  expect(wh(lineM * 0.94)).toBeLessThan(0.2 * open);
});
