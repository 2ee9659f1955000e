import { expect, test } from "vitest";
import type { PlanPoint } from "../../../engine/answers/shade/boxFootprint.ts";
import type { Box, Tree } from "../../../engine/scenario/obstacle.ts";
import { lightThrough, prepareObstacles } from "../../../engine/shade/index.ts";
import { boxShadow, crownShadow, shadowOf } from "../../../explorer/entries/shade/groundShadow.ts";

const TREE: Tree = {
  kind: "tree",
  id: "tree",
  eastM: 3,
  northM: -2,
  heightM: 12,
  crownBaseM: 4,
  crownRadiusM: 3,
  trunkRadiusM: 0.01,
  transmittanceInLeafShare: 0.1,
  transmittanceBareShare: 0.4,
  leafShare: 1,
};
const BOX: Box = {
  kind: "box",
  id: "box",
  eastM: 5,
  northM: 1,
  baseM: 1.5,
  heightM: 6,
  lengthM: 12,
  widthM: 4,
  headingDeg: 25,
};

test("a post's shadow is its height over the tangent of the sun's elevation, away from the sun", () => {
  const from = { eastM: 1, northM: 2 };
  const south = shadowOf(from, 3, 180, 45);
  expect(south.eastM).toBeCloseTo(1, 12);
  expect(south.northM).toBeCloseTo(5, 12);
  const west = shadowOf(from, 1, 270, 30);
  expect(west.eastM).toBeCloseTo(1 + Math.sqrt(3), 12);
  expect(west.northM).toBeCloseTo(2, 12);
});

test("a ball's shadow is an ellipse as long as its diameter over the sine of the sun's elevation", () => {
  const ball = { ...TREE, heightM: 10, crownBaseM: 4, crownRadiusM: 3 };
  const shadow = crownShadow(ball, 135, 30);
  expect(shadow.acrossM).toBe(3);
  expect(shadow.alongM).toBeCloseTo(3 / Math.sin(Math.PI / 6), 12);
  expect(Math.hypot(shadow.eastM - 3, shadow.northM + 2)).toBeCloseTo(7 * Math.sqrt(3), 12);
});

test.each([
  [100, 20],
  [180, 36],
  [250, 62],
])("the crown's ellipse at %i°, %i° up is where the engine finds shade on the ground", (azimuthDeg, elevationDeg) => {
  const shadow = crownShadow(TREE, azimuthDeg, elevationDeg);
  const obstacles = prepareObstacles([TREE]);
  const bearing = (shadow.bearingDeg * Math.PI) / 180;
  for (let turn = 0; turn < 360; turn += 15) {
    const along = shadow.alongM * Math.cos((turn * Math.PI) / 180);
    const across = shadow.acrossM * Math.sin((turn * Math.PI) / 180);
    const light = (times: number) => {
      const eastM = shadow.eastM + times * (along * Math.sin(bearing) + across * Math.cos(bearing));
      const northM = shadow.northM + times * (along * Math.cos(bearing) - across * Math.sin(bearing));
      return lightThrough(obstacles, { eastM, northM, upM: 0 }, azimuthDeg, elevationDeg);
    };
    expect(light(0.999)).toBeLessThan(1);
    // Towards the sun lies the trunk's own shadow.
    if (turn % 180 !== 0) expect(light(1.001)).toBe(1);
  }
});

test.each([
  [120, 25],
  [205, 50],
  [300, 12],
])("the box's hull at %i°, %i° up is where the engine finds shade on the ground", (azimuthDeg, elevationDeg) => {
  const outline = boxShadow(BOX, azimuthDeg, elevationDeg);
  const obstacles = prepareObstacles([BOX]);
  const light = ({ eastM, northM }: PlanPoint) =>
    lightThrough(obstacles, { eastM, northM, upM: 0 }, azimuthDeg, elevationDeg);
  const middle = {
    eastM: outline.reduce((sum, point) => sum + point.eastM, 0) / outline.length,
    northM: outline.reduce((sum, point) => sum + point.northM, 0) / outline.length,
  };
  expect(outline.length).toBeGreaterThanOrEqual(4);
  outline.forEach((point, i) => {
    const next = outline[(i + 1) % outline.length]!;
    for (const share of [0, 0.25, 0.5, 0.75]) {
      const edge = {
        eastM: point.eastM + share * (next.eastM - point.eastM),
        northM: point.northM + share * (next.northM - point.northM),
      };
      const at = (times: number) =>
        light({
          eastM: middle.eastM + times * (edge.eastM - middle.eastM),
          northM: middle.northM + times * (edge.northM - middle.northM),
        });
      expect(at(0.99)).toBe(0);
      expect(at(1.01)).toBe(1);
    }
  });
});
