import { expect, test } from "vitest";
import { boxFootprint, type PlanPoint } from "../../../engine/answers/shade/boxFootprint.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import { moduleFootprints } from "../../../explorer/entries/shade/moduleFootprints.ts";
import { gridLines, planView, reachOf, wholeSite, zoomed } from "../../../explorer/entries/shade/planView.ts";
import { thingsOf } from "../../../explorer/entries/shade/thing.ts";
import { EXAMPLE } from "../exampleRun.ts";

const found = readScenario(EXAMPLE);
if (!found.ok) throw new Error(found.problems[0]!.message);
const things = thingsOf(found.scenario);

function areaM2(corners: readonly PlanPoint[]): number {
  const twice = corners.reduce((sum, a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    return sum + a.eastM * b.northM - b.eastM * a.northM;
  }, 0);
  return Math.abs(twice) / 2;
}

test("the whole site fits into the plan, north up, with the same scale both ways", () => {
  for (const [width, height] of [
    [510, 320],
    [328, 300],
  ] as const) {
    const frame = wholeSite(things, width, height);
    const view = planView(frame, width, height);
    for (const thing of things) {
      const reachM = reachOf(thing);
      expect(view.x(thing.eastM - reachM)).toBeGreaterThan(0);
      expect(view.x(thing.eastM + reachM)).toBeLessThan(width);
      expect(view.y(thing.northM + reachM)).toBeGreaterThan(0);
      expect(view.y(thing.northM - reachM)).toBeLessThan(height);
    }
    expect(view.x(10) - view.x(0)).toBeCloseTo(view.y(0) - view.y(10), 9);
    expect(view.y(5)).toBeLessThan(view.y(0));
    const lines = gridLines(frame, view);
    expect(lines.eastM).toContain(0);
    expect(lines.eastM[1]! - lines.eastM[0]!).toBe(10);
    const named = lines.namedEastM.map((at) => view.x(at));
    named.slice(1).forEach((x, i) => {
      expect(x - named[i]!).toBeGreaterThanOrEqual(64);
    });
  }
});

test("zooming keeps the middle and holds at its ends", () => {
  const frame = { eastM: 3, northM: -4, spanM: 60 };
  expect(zoomed(frame, 0.5)).toEqual({ eastM: 3, northM: -4, spanM: 30 });
  expect(zoomed(frame, 1e-6).spanM).toBeGreaterThanOrEqual(10);
  expect(zoomed(frame, 1e6).spanM).toBeLessThanOrEqual(1200);
});

test("a box is turned by its heading: one that heads east lies along the east", () => {
  const corners = boxFootprint({
    kind: "box",
    id: "b",
    eastM: 1,
    northM: 2,
    baseM: 0,
    heightM: 3,
    lengthM: 10,
    widthM: 4,
    headingDeg: 90,
  });
  expect(Math.max(...corners.map((corner) => corner.eastM))).toBeCloseTo(6, 9);
  expect(Math.max(...corners.map((corner) => corner.northM))).toBeCloseTo(4, 9);
  expect(areaM2(corners)).toBeCloseTo(40, 9);
});

test("level modules are seen in full, tilted ones shortened by the cosine of the tilt", () => {
  const group = { ...found.scenario.panels[0]!, count: 2 };
  const { lengthM, widthM } = group.module;
  for (const tiltDeg of [0, 60]) {
    const modules = moduleFootprints(group, tiltDeg, 150);
    expect(modules).toHaveLength(2);
    for (const corners of modules) {
      expect(areaM2(corners)).toBeCloseTo(lengthM * widthM * Math.cos((tiltDeg * Math.PI) / 180), 9);
    }
  }
  // A row that faces south runs from east to west.
  const [first, second] = moduleFootprints(group, 30, 180).map((corners) => corners[0]!);
  expect(first!.northM).toBeCloseTo(second!.northM, 9);
  expect(Math.abs(first!.eastM - second!.eastM)).toBeCloseTo(widthM + 0.02, 9);
});
