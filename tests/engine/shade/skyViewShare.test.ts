import { expect, test } from "vitest";
import { Obstacle } from "../../../engine/scenario/obstacle.ts";
import { prepareObstacles } from "../../../engine/shade/prepareObstacles.ts";
import { skyMaps, skyShareOnPlane, skyViewShare } from "../../../engine/shade/skyViewShare.ts";

const origin = Float64Array.of(0, 0, 1);
const skyline = (elevationDeg: number) =>
  prepareObstacles([{ kind: "horizon", id: "h", points: [{ bearingDeg: 0, elevationDeg }] }]);
const wall = (heightM: number) =>
  prepareObstacles([
    Obstacle.parse({ kind: "box", id: "w", eastM: 0, northM: 5, heightM, lengthM: 300, widthM: 0.2, headingDeg: 90 }),
  ]);

test("nothing about: the whole of every plane's sky", () => {
  for (const tiltDeg of [0, 45, 90]) expect(skyViewShare(prepareObstacles([]), origin, tiltDeg, 123)).toBe(1);
});

test("a level skyline leaves cos² of its height to a level plane", () => {
  for (const elevationDeg of [5, 17, 30, 60]) {
    const share = skyViewShare(skyline(elevationDeg), origin, 0, 0);
    expect(share).toBeCloseTo(Math.cos((elevationDeg * Math.PI) / 180) ** 2, 3);
  }
});

test("a long wall takes (1 − cos) ÷ 2 of its angle from a level plane", () => {
  // A wall without end seen under an angle a takes (1 − cos a) ÷ 2 of a level plane's light; the ends of this one are far off.
  const share = skyViewShare(wall(6), origin, 0, 0);
  const angle = Math.atan2(5, 4.9);
  expect(1 - share).toBeCloseTo((1 - Math.cos(angle)) / 2, 2);
});

test("a wall matters more to a plane that faces it", () => {
  const map = skyMaps(wall(6), origin)[0]!;
  const towards = skyShareOnPlane(map, 60, 0);
  const away = skyShareOnPlane(map, 60, 180);
  expect(towards).toBeLessThan(skyShareOnPlane(map, 0, 0));
  expect(away).toBeGreaterThan(0.98);
});

test("the mean is taken over the points", () => {
  const near = skyViewShare(wall(6), Float64Array.of(0, 3, 1), 0, 0);
  const far = skyViewShare(wall(6), Float64Array.of(0, -20, 1), 0, 0);
  const both = skyViewShare(wall(6), Float64Array.of(0, 3, 1, 0, -20, 1), 0, 0);
  expect(both).toBeCloseTo((near + far) / 2, 10);
  expect(near).toBeLessThan(far);
});

test("a crown that lets half through its middle takes under half as much", () => {
  const crown = (transmittanceInLeafShare: number) =>
    prepareObstacles([
      Obstacle.parse({
        kind: "tree",
        id: "t",
        eastM: 0,
        northM: 6,
        heightM: 8,
        crownBaseM: 3,
        crownRadiusM: 2.5,
        trunkRadiusM: 0.01,
        transmittanceInLeafShare,
      }),
    ]);
  const opaque = 1 - skyViewShare(crown(0), origin, 0, 0);
  const thin = 1 - skyViewShare(crown(0.5), origin, 0, 0);
  expect(thin).toBeGreaterThan(0.3 * opaque);
  expect(thin).toBeLessThan(0.5 * opaque);
});
