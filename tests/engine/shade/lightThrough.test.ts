import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type * as z from "zod";
import { RAD_PER_DEG } from "../../../engine/angle.ts";
import { Obstacle } from "../../../engine/scenario/obstacle.ts";
import { boxLight } from "../../../engine/shade/boxLight.ts";
import { dimByTree } from "../../../engine/shade/dimByTree.ts";
import { lightOnPoints, lightThrough, pointCloud } from "../../../engine/shade/lightThrough.ts";
import { prepareObstacles } from "../../../engine/shade/prepareObstacles.ts";

type ObstacleInput = z.input<typeof Obstacle>;

const ready = (...obstacles: ObstacleInput[]) => prepareObstacles(obstacles.map((from) => Obstacle.parse(from)));

/** A round crown of 2 m radius about a point 5 m up, 10 m to the north; the trunk is thin. */
function tree(changes: Partial<Extract<ObstacleInput, { kind: "tree" }>> = {}): ObstacleInput {
  return {
    kind: "tree",
    id: "tree",
    eastM: 0,
    northM: 10,
    heightM: 7,
    crownBaseM: 3,
    crownRadiusM: 2,
    trunkRadiusM: 0.01,
    transmittanceInLeafShare: 0.2,
    transmittanceBareShare: 0.6,
    ...changes,
  };
}

const box: ObstacleInput = {
  kind: "box",
  id: "box",
  eastM: 0,
  northM: 10,
  baseM: 1,
  heightM: 4,
  lengthM: 6,
  widthM: 2,
  headingDeg: 90,
};

describe("a crown", () => {
  test("lets its stated share through along a level path through the middle", () => {
    expect(lightThrough(ready(tree()), { eastM: 0.02, northM: 0, upM: 5 }, 0, 0)).toBeCloseTo(0.2, 4);
  });

  test("lets more through where the path is shorter, as the share to the power of path ÷ diameter", () => {
    const chordM = 2 * Math.sqrt(4 - 1.5 ** 2);
    expect(lightThrough(ready(tree()), { eastM: 1.5, northM: 0, upM: 5 }, 0, 0)).toBeCloseTo(0.2 ** (chordM / 4), 10);
  });

  test("is left by a ray that starts inside it: only the part ahead counts", () => {
    expect(lightThrough(ready(tree()), { eastM: 0.02, northM: 10.5, upM: 5 }, 0, 0)).toBeCloseTo(0.2 ** (1.5 / 4), 4);
  });

  test("takes nothing when it stands behind the point", () => {
    expect(lightThrough(ready(tree()), { eastM: 0, northM: 0, upM: 5 }, 180, 0)).toBe(1);
    expect(lightThrough(ready(tree()), { eastM: 0, northM: 13, upM: 5 }, 0, 0)).toBe(1);
  });

  test("is opaque at a share of 0", () => {
    const opaque = ready(tree({ transmittanceInLeafShare: 0 }));
    expect(lightThrough(opaque, { eastM: 0, northM: 0, upM: 5 }, 0, 0)).toBe(0);
    expect(lightThrough(opaque, { eastM: 2.001, northM: 0, upM: 5 }, 0, 0)).toBe(1);
  });

  test("half out of leaf lies half-way between leaf and bare", () => {
    const half = ready(tree({ leafShare: 0.5 }));
    expect(lightThrough(half, { eastM: 0.02, northM: 0, upM: 5 }, 0, 0)).toBeCloseTo(0.4, 4);
  });

  test("taller than wide is an ellipsoid: straight up the path is as long as the crown is tall", () => {
    const tall = ready(tree({ heightM: 11 }));
    const light = lightThrough(tall, { eastM: 0.02, northM: 10, upM: 0 }, 0, 90);
    expect(light).toBeCloseTo(0.2 ** (8 / 4), 4);
    // Three quarters of the way from its middle to its top it is √(1 − 0.75²) as wide.
    const radiusM = 2 * Math.sqrt(1 - 0.75 ** 2);
    expect(lightThrough(tall, { eastM: radiusM + 0.01, northM: 0, upM: 10 }, 0, 0)).toBe(1);
    expect(lightThrough(tall, { eastM: 0, northM: 0, upM: 10 }, 0, 0)).toBeCloseTo(0.2 ** ((2 * radiusM) / 4), 10);
  });
});

describe("a trunk", () => {
  const bare = ready(tree({ trunkRadiusM: 0.3, transmittanceInLeafShare: 1 }));

  test("stops everything from the ground to the crown's middle", () => {
    expect(lightThrough(bare, { eastM: 0, northM: 0, upM: 0.5 }, 0, 0)).toBe(0);
    expect(lightThrough(bare, { eastM: 0.29, northM: 0, upM: 4.99 }, 0, 0)).toBe(0);
    expect(lightThrough(bare, { eastM: 0.31, northM: 0, upM: 4.99 }, 0, 0)).toBe(1);
    expect(lightThrough(bare, { eastM: 0, northM: 0, upM: 5.01 }, 0, 0)).toBe(1);
  });

  test("is passed over by a ray that has risen above its top, not by one still below", () => {
    const justAbove = Math.atan2(4.02, 9.7) / RAD_PER_DEG;
    const justBelow = Math.atan2(3.98, 9.7) / RAD_PER_DEG;
    expect(lightThrough(bare, { eastM: 0, northM: 0, upM: 1 }, 0, justAbove)).toBe(1);
    expect(lightThrough(bare, { eastM: 0, northM: 0, upM: 1 }, 0, justBelow)).toBe(0);
  });

  test("hides the zenith only from within", () => {
    expect(lightThrough(bare, { eastM: 0, northM: 10, upM: 1 }, 0, 90)).toBe(0);
    expect(lightThrough(bare, { eastM: 0.5, northM: 10, upM: 1 }, 0, 90)).toBe(1);
  });
});

describe("a box", () => {
  test("has its length along its heading", () => {
    const east = ready(box);
    expect(lightThrough(east, { eastM: 2.9, northM: 0, upM: 2 }, 0, 0)).toBe(0);
    expect(lightThrough(east, { eastM: 3.1, northM: 0, upM: 2 }, 0, 0)).toBe(1);
    const north = ready({ ...box, headingDeg: 0 });
    expect(lightThrough(north, { eastM: 0.9, northM: 0, upM: 2 }, 0, 0)).toBe(0);
    expect(lightThrough(north, { eastM: 1.1, northM: 0, upM: 2 }, 0, 0)).toBe(1);
    // Turned clockwise: at 45° the long axis points north-east.
    const turned = ready({ ...box, eastM: 0, northM: 0, headingDeg: 45 });
    expect(lightThrough(turned, { eastM: 1.8, northM: 1.8, upM: 0 }, 0, 90)).toBe(0);
    expect(lightThrough(turned, { eastM: 1.8, northM: -1.8, upM: 0 }, 0, 90)).toBe(1);
  });

  test("hides what lies between its underside and its top", () => {
    const rows = [
      { upM: 0.9, light: 1 },
      { upM: 1.1, light: 0 },
      { upM: 3.9, light: 0 },
      { upM: 4.1, light: 1 },
    ];
    for (const { upM, light } of rows) expect(lightThrough(ready(box), { eastM: 0, northM: 0, upM }, 0, 0)).toBe(light);
  });

  test("does not shade a panel that lies on it", () => {
    expect(lightThrough(ready(box), { eastM: 1, northM: 10, upM: 4 }, 70, 30)).toBe(1);
    expect(lightThrough(ready(box), { eastM: 1, northM: 10, upM: 3.99 }, 70, 30)).toBe(0);
  });

  test("takes nothing when it stands behind the point", () => {
    expect(lightThrough(ready(box), { eastM: 0, northM: 0, upM: 2 }, 180, 0)).toBe(1);
  });
});

describe("a skyline", () => {
  const hills = ready({
    kind: "horizon",
    id: "hills",
    points: [
      { bearingDeg: 350, elevationDeg: 20 },
      { bearingDeg: 90, elevationDeg: 0 },
      { bearingDeg: 10, elevationDeg: 10 },
    ],
  });
  const light = (azimuthDeg: number, elevationDeg: number) =>
    lightThrough(hills, { eastM: 0, northM: 0, upM: 0 }, azimuthDeg, elevationDeg);

  test("is a line between its points, over north too, in whatever order they come", () => {
    const rows = [
      { azimuthDeg: 350, lineDeg: 20 },
      { azimuthDeg: 0, lineDeg: 15 },
      { azimuthDeg: 10, lineDeg: 10 },
      { azimuthDeg: 50, lineDeg: 5 },
      { azimuthDeg: 220, lineDeg: 10 },
    ];
    for (const { azimuthDeg, lineDeg } of rows) {
      expect(light(azimuthDeg, lineDeg - 0.01)).toBe(0);
      expect(light(azimuthDeg, lineDeg + 0.01)).toBe(1);
    }
  });

  test("of a single point is level all round", () => {
    const level = ready({ kind: "horizon", id: "h", points: [{ bearingDeg: 120, elevationDeg: 7 }] });
    for (const azimuthDeg of [0, 119, 121, 359]) {
      expect(lightThrough(level, { eastM: 0, northM: 0, upM: 0 }, azimuthDeg, 6.9)).toBe(0);
      expect(lightThrough(level, { eastM: 0, northM: 0, upM: 0 }, azimuthDeg, 7.1)).toBe(1);
    }
  });
});

test("what several obstacles let through multiplies", () => {
  const point = { eastM: 0.02, northM: 0, upM: 5 };
  const second = tree({ id: "second", northM: 20 });
  expect(lightThrough(ready(tree(), second), point, 0, 0)).toBeCloseTo(0.04, 4);
  expect(lightThrough(ready(tree(), { ...box, heightM: 6 }), point, 0, 0)).toBe(0);
});

test("an obstacle without extent is refused by its name and field", () => {
  const bad = (from: object) => () => prepareObstacles([{ ...from } as Obstacle]);
  expect(bad({ ...Obstacle.parse(tree()), crownBaseM: 7 })).toThrow("heightM of tree tree must be above");
  expect(bad({ ...Obstacle.parse(tree()), crownRadiusM: 0 })).toThrow("crownRadiusM of tree tree must be more than 0");
  expect(bad({ ...Obstacle.parse(box), heightM: 1 })).toThrow(
    "heightM of box box must be above its baseM (1 m), got 1",
  );
  expect(bad({ ...Obstacle.parse(box), widthM: 0 })).toThrow("widthM of box box must be more than 0 m, got 0");
  expect(bad({ kind: "horizon", id: "h", points: [] })).toThrow("horizon h must have at least one point");
});

describe("for any obstacles, point and sun", () => {
  const coordinate = fc.double({ min: -15, max: 15, noNaN: true });
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const anyTree = fc.record({
    kind: fc.constant("tree" as const),
    id: fc.constant("t"),
    eastM: coordinate,
    northM: coordinate,
    heightM: fc.double({ min: 4, max: 15, noNaN: true }),
    crownBaseM: fc.double({ min: 0, max: 3.5, noNaN: true }),
    crownRadiusM: fc.double({ min: 0.3, max: 5, noNaN: true }),
    trunkRadiusM: fc.double({ min: 0.01, max: 0.6, noNaN: true }),
    transmittanceInLeafShare: share,
    transmittanceBareShare: share,
    leafShare: share,
  });
  const anyBox = fc.record({
    kind: fc.constant("box" as const),
    id: fc.constant("b"),
    eastM: coordinate,
    northM: coordinate,
    baseM: fc.double({ min: 0, max: 3, noNaN: true }),
    heightM: fc.double({ min: 3.1, max: 12, noNaN: true }),
    lengthM: fc.double({ min: 0.1, max: 12, noNaN: true }),
    widthM: fc.double({ min: 0.1, max: 12, noNaN: true }),
    headingDeg: fc.double({ min: 0, max: 360, noNaN: true }),
  });
  const obstacles = fc.array(fc.oneof(anyTree, anyBox), { minLength: 1, maxLength: 4 });
  const point = fc.record({
    eastM: coordinate,
    northM: coordinate,
    upM: fc.double({ min: 0.02, max: 5, noNaN: true }),
  });
  const azimuth = fc.double({ min: 0, max: 360, noNaN: true });
  const elevation = fc.double({ min: 0.1, max: 90, noNaN: true });

  test("the light is a share", () => {
    fc.assert(
      fc.property(obstacles, point, azimuth, elevation, (list, at, azimuthDeg, elevationDeg) => {
        const light = lightThrough(prepareObstacles(list), at, azimuthDeg, elevationDeg);
        expect(light).toBeGreaterThanOrEqual(0);
        expect(light).toBeLessThanOrEqual(1);
      }),
      { numRuns: 300 },
    );
  });

  test("passing over what cannot be in the way changes nothing", () => {
    fc.assert(
      fc.property(
        obstacles,
        fc.array(point, { minLength: 1, maxLength: 6 }),
        azimuth,
        elevation,
        (list, points, azimuthDeg, elevationDeg) => {
          const prepared = prepareObstacles(list);
          const cloud = pointCloud(Float64Array.from(points.flatMap((p) => [p.eastM, p.northM, p.upM])));
          const light = new Float64Array(points.length);
          lightOnPoints(prepared, cloud, azimuthDeg, elevationDeg, light);
          const level = Math.cos(elevationDeg * RAD_PER_DEG);
          const direction = [
            level * Math.sin(azimuthDeg * RAD_PER_DEG),
            level * Math.cos(azimuthDeg * RAD_PER_DEG),
            Math.sin(elevationDeg * RAD_PER_DEG),
          ] as const;
          for (const [p, { eastM, northM, upM }] of points.entries()) {
            const own = Float64Array.of(1);
            for (const one of prepared.trees) dimByTree(one, Float64Array.of(eastM, northM, upM), ...direction, own);
            for (const one of prepared.boxes) own[0]! *= boxLight(one, eastM, northM, upM, ...direction);
            expect(light[p]).toBe(own[0]);
          }
        },
      ),
      { numRuns: 500 },
    );
  });

  test("levels of crowns are what each of them is by itself", () => {
    const through = (planned: number, factor: number) => Math.min(0.95, factor * planned);
    fc.assert(
      fc.property(
        obstacles,
        fc.array(point, { minLength: 1, maxLength: 4 }),
        azimuth,
        elevation,
        share,
        (list, points, azimuthDeg, elevationDeg, spread) => {
          const factors = [1, 1 - spread, 1 + spread, 0];
          const cloud = pointCloud(Float64Array.from(points.flatMap((p) => [p.eastM, p.northM, p.upM])));
          const together = new Float64Array(factors.length * points.length);
          lightOnPoints(prepareObstacles(list, 1, factors), cloud, azimuthDeg, elevationDeg, together);
          const alone = new Float64Array(points.length);
          for (const [level, factor] of factors.entries()) {
            const own = list.map((one) => {
              if (one.kind === "box" || factor === 1) return one;
              const transmittanceInLeafShare = through(one.transmittanceInLeafShare, factor);
              return {
                ...one,
                transmittanceInLeafShare,
                transmittanceBareShare: through(one.transmittanceBareShare, factor),
              };
            });
            lightOnPoints(prepareObstacles(own), cloud, azimuthDeg, elevationDeg, alone);
            expect(together.subarray(level * points.length, (level + 1) * points.length)).toEqual(alone);
          }
          expect(together.every((light) => light >= 0 && light <= 1)).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });

  test("a crown that lets more through never darkens", () => {
    fc.assert(
      fc.property(obstacles, point, azimuth, elevation, share, (list, at, azimuthDeg, elevationDeg, more) => {
        const thinner = list.map((one) =>
          one.kind === "box"
            ? one
            : {
                ...one,
                transmittanceInLeafShare: one.transmittanceInLeafShare + more * (1 - one.transmittanceInLeafShare),
                transmittanceBareShare: one.transmittanceBareShare + more * (1 - one.transmittanceBareShare),
              },
        );
        const before = lightThrough(prepareObstacles(list), at, azimuthDeg, elevationDeg);
        const after = lightThrough(prepareObstacles(thinner), at, azimuthDeg, elevationDeg);
        expect(after).toBeGreaterThanOrEqual(before - 1e-12);
      }),
    );
  });

  test("one obstacle more never brightens", () => {
    fc.assert(
      fc.property(obstacles, anyTree, point, azimuth, elevation, (list, extra, at, azimuthDeg, elevationDeg) => {
        const before = lightThrough(prepareObstacles(list), at, azimuthDeg, elevationDeg);
        const after = lightThrough(prepareObstacles([...list, extra]), at, azimuthDeg, elevationDeg);
        expect(after).toBeLessThanOrEqual(before);
      }),
    );
  });

  test("moving everything changes nothing, turning everything changes nothing", () => {
    // Crowns only: at the edge of something opaque the last bit of a coordinate decides.
    fc.assert(
      fc.property(anyTree, point, azimuth, elevation, coordinate, (from, at, azimuthDeg, elevationDeg, shiftM) => {
        const soft = { ...from, trunkRadiusM: 0, transmittanceInLeafShare: 0.3, transmittanceBareShare: 0.3 };
        const light = lightThrough(prepareObstacles([soft]), at, azimuthDeg, elevationDeg);
        const moved = lightThrough(
          prepareObstacles([{ ...soft, eastM: soft.eastM + shiftM, northM: soft.northM - shiftM }]),
          { ...at, eastM: at.eastM + shiftM, northM: at.northM - shiftM },
          azimuthDeg,
          elevationDeg,
        );
        expect(moved).toBeCloseTo(light, 5);
        // A quarter turn clockwise: north becomes east, east becomes south.
        const turned = lightThrough(
          prepareObstacles([{ ...soft, eastM: soft.northM, northM: -soft.eastM }]),
          { ...at, eastM: at.northM, northM: -at.eastM },
          azimuthDeg + 90,
          elevationDeg,
        );
        expect(turned).toBeCloseTo(light, 5);
      }),
      { numRuns: 300 },
    );
  });
});

test("a low block shades the foot of a panel whose middle stands above it", () => {
  const wall = ready({ kind: "box", id: "wall", eastM: 0, northM: -5, heightM: 1, lengthM: 1, widthM: 1 });
  const upM = [0.7, 0.9, 1.2, 1.5, 1.7];
  const cloud = pointCloud(Float64Array.from(upM.flatMap((up) => [0, 0, up])));
  const light = new Float64Array(upM.length);
  // A degree up, a ray rises 8 cm on its way to the block's near face 4.5 m off.
  expect(lightOnPoints(wall, cloud, 180, 1, light)).toBe(true);
  expect([...light]).toEqual([0, 0, 1, 1, 1]);
});
