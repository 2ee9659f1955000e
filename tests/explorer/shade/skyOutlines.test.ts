import { expect, test } from "vitest";
import type { Box, Obstacle, Tree } from "../../../engine/scenario/obstacle.ts";
import { lightThrough, type Point, prepareObstacles } from "../../../engine/shade/index.ts";
import { boxOutline } from "../../../explorer/entries/shade/boxOutline.ts";
import { crownOutline, type SkySpan } from "../../../explorer/entries/shade/crownOutline.ts";
import { trunkOutline } from "../../../explorer/entries/shade/trunkOutline.ts";

const TREE: Tree = {
  kind: "tree",
  id: "tree",
  eastM: 0,
  northM: 0,
  heightM: 14,
  crownBaseM: 4,
  crownRadiusM: 4,
  trunkRadiusM: 0.3,
  transmittanceInLeafShare: 0.1,
  transmittanceBareShare: 0.4,
  leafShare: 1,
};
const BOX: Box = {
  kind: "box",
  id: "box",
  eastM: 0,
  northM: 0,
  baseM: 0,
  heightM: 5,
  lengthM: 10,
  widthM: 6,
  headingDeg: 0,
};
const eye = (eastM: number, northM: number, upM: number): Point => ({ eastM, northM, upM });
/** An outline is true to this; at the very sides of a crown high and low meet and the sight only grazes it. */
const NEAR_DEG = 0.05;

/** Holds an outline to the engine's rays just inside and just outside of it, above the level. */
function expectOutline(obstacle: Obstacle, point: Point, spans: readonly SkySpan[]): void {
  const obstacles = prepareObstacles([obstacle]);
  const light = (bearingDeg: number, elevationDeg: number) => lightThrough(obstacles, point, bearingDeg, elevationDeg);
  let looks = 0;
  for (const { bearingDeg: at, lowDeg, highDeg } of spans) {
    if (highDeg - lowDeg < 1) continue;
    // A wall ends at its corner: a hair inside of it.
    const bearingDeg = Math.min(spans.at(-1)!.bearingDeg - 0.01, Math.max(spans[0]!.bearingDeg + 0.01, at));
    if (highDeg < 89 && highDeg > 0.1) {
      looks++;
      expect(light(bearingDeg, highDeg - NEAR_DEG)).toBeLessThan(1);
      expect(light(bearingDeg, highDeg + NEAR_DEG)).toBe(1);
    }
    if (lowDeg > 0.1) {
      looks++;
      expect(light(bearingDeg, lowDeg + NEAR_DEG)).toBeLessThan(1);
      expect(light(bearingDeg, lowDeg - NEAR_DEG)).toBe(1);
    }
  }
  expect(looks).toBeGreaterThan(20);
}

test("a ball seen from its own height is as wide and as high as the arc sine of radius over distance", () => {
  const ball = { ...TREE, heightM: 9, crownBaseM: 3, crownRadiusM: 3 };
  const spans = crownOutline(ball, eye(0, -10, 6));
  const halfDeg = (Math.asin(0.3) * 180) / Math.PI;
  expect(spans[0]!.bearingDeg).toBeCloseTo(-halfDeg, 9);
  expect(spans.at(-1)!.bearingDeg).toBeCloseTo(halfDeg, 9);
  expect(Math.max(...spans.map((span) => span.highDeg))).toBeCloseTo(halfDeg, 9);
  expect(Math.min(...spans.map((span) => span.lowDeg))).toBeCloseTo(-halfDeg, 9);
});

test.each([
  ["from afar on the ground", eye(12, -9, 0.5)],
  ["from close by", eye(-4.5, 1, 2)],
  ["from a roof of the crown's height", eye(3, 9, 8)],
  ["from beneath", eye(1.5, -2, 1)],
])("a crown %s is where the engine's rays meet it", (_, point) => {
  expectOutline({ ...TREE, trunkRadiusM: 1e-9 }, point, crownOutline(TREE, point));
});

test("a crown that is wholly below, or round the eye, has no outline", () => {
  expect(crownOutline(TREE, eye(10, 0, 20))).toEqual([]);
  expect(crownOutline(TREE, eye(0, 0, 9))).toEqual([]);
});

test("a wall's top stands at the arc tangent of height over distance, and falls off aside", () => {
  const spans = boxOutline(BOX, eye(-13, 0, 1));
  // The near face is 10 m off: straight ahead is bearing 90, the corner of the face 5 m aside.
  const at = (bearingDeg: number) =>
    spans.reduce((a, b) => (Math.abs(b.bearingDeg - bearingDeg) < Math.abs(a.bearingDeg - bearingDeg) ? b : a));
  expect(at(90).highDeg).toBeCloseTo((Math.atan(4 / 10) * 180) / Math.PI, 6);
  expect(spans.at(-1)!.bearingDeg).toBeCloseTo(90 + (Math.atan(5 / 10) * 180) / Math.PI, 6);
  expect(at(spans.at(-1)!.bearingDeg).highDeg).toBeCloseTo((Math.atan(4 / Math.hypot(10, 5)) * 180) / Math.PI, 3);
});

test.each([
  ["on the ground", BOX, eye(-9, 5, 0.5)],
  ["turned", { ...BOX, headingDeg: 37 }, eye(2, -14, 1)],
  ["hung above the eye", { ...BOX, baseM: 2.5 }, eye(-9, 5, 0.5)],
])("a box %s is where the engine's rays meet it", (_, box, point) => {
  expectOutline(box, point, boxOutline(box, point));
});

test("what lies beneath the eye is no obstacle; a roof overhead is one all round", () => {
  expect(boxOutline(BOX, eye(0, 0, 5))).toEqual([]);
  expect(boxOutline(BOX, eye(20, 0, 6))).toEqual([]);
  const roof = { ...BOX, baseM: 3 };
  expectOutline(roof, eye(1, 1, 0.5), boxOutline(roof, eye(1, 1, 0.5)));
});

test("a trunk is as wide as the arc sine of its radius over the distance, and ends where the crown begins", () => {
  const spans = trunkOutline(TREE, eye(0, -6, 1));
  expect(spans[1]!.bearingDeg).toBeCloseTo((Math.asin(0.3 / 6) * 180) / Math.PI, 9);
  expect(spans[0]!.highDeg).toBeCloseTo((Math.atan2(3, 6) * 180) / Math.PI, 9);
  const obstacles = prepareObstacles([TREE]);
  const at = (bearingDeg: number) => lightThrough(obstacles, eye(0, -6, 1), bearingDeg, 5);
  expect(at(spans[1]!.bearingDeg - NEAR_DEG)).toBe(0);
  expect(at(spans[1]!.bearingDeg + NEAR_DEG)).toBe(1);
});
