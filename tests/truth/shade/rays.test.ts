import { expect, test } from "vitest";
import { RAD_PER_DEG } from "../../../engine/angle.ts";
import { modulePoints } from "../../../engine/array/modulePoints.ts";
import { Obstacle } from "../../../engine/scenario/obstacle.ts";
import { lightOnPoints, lightThrough, pointCloud } from "../../../engine/shade/lightThrough.ts";
import { prepareObstacles } from "../../../engine/shade/prepareObstacles.ts";
import { skyViewShare } from "../../../engine/shade/skyViewShare.ts";
import { panelGroup } from "../../engine/array/oneGroup.ts";
import truth from "../data/shading.json";
import { record } from "../record.ts";

interface TruthObstacle {
  kind: string;
  bearing: number;
  distance: number;
  height: number;
  crownRadius?: number;
  trunkRadius?: number;
  radius?: number;
  base?: number;
  length?: number;
  width?: number;
  heading?: number;
}

/** The file's obstacles in the project's terms; a bare cylinder is the trunk of a tree whose crown hides nothing. */
function obstacle(from: TruthObstacle): Obstacle {
  const place = {
    id: "x",
    eastM: from.distance * Math.sin(from.bearing * RAD_PER_DEG),
    northM: from.distance * Math.cos(from.bearing * RAD_PER_DEG),
  };
  if (from.kind === "box") {
    return Obstacle.parse({
      kind: "box",
      ...place,
      baseM: from.base ?? 0,
      heightM: from.height,
      lengthM: from.length,
      widthM: from.width,
      headingDeg: from.heading,
    });
  }
  if (from.kind === "cylinder") {
    return Obstacle.parse({
      kind: "tree",
      ...place,
      heightM: from.height + 1,
      crownBaseM: from.height - 1,
      crownRadiusM: 1,
      trunkRadiusM: from.radius,
      transmittanceInLeafShare: 1,
    });
  }
  return Obstacle.parse({
    kind: "tree",
    ...place,
    heightM: from.height,
    crownBaseM: from.height - 2 * from.crownRadius!,
    crownRadiusM: from.crownRadius,
    trunkRadiusM: from.trunkRadius,
    transmittanceInLeafShare: 0,
  });
}

const source = "own derivation checked by marching along each ray, 2026 (tests/truth/data/shading.json)";

test("a ray is blocked exactly where geometry says", () => {
  const prepared = truth.rayObstacles.map((from) => prepareObstacles([obstacle(from)]));
  let wrong = 0;
  for (const [index, upM, azimuthDeg, elevationDeg, blocked] of truth.rays.rows) {
    const light = lightThrough(prepared[index!]!, { eastM: 0, northM: 0, upM: upM! }, azimuthDeg!, elevationDeg!);
    if (light !== 1 - blocked!) wrong++;
  }
  const n = truth.rays.rows.length;
  record({ what: "rays past trees and masts", source, tolerance: 0, why: "yes or no", worst: wrong, unit: "rays", n });
  expect(n).toBe(120);
  expect(wrong).toBe(0);
});

/** Share of a panel's points that get no sun. */
function blockedShare(panel: (typeof truth.panels)[number], across: number): number {
  const { centre, width, length, tilt, azimuth } = panel.panel;
  const [eastM, northM, heightM] = centre as [number, number, number];
  const module = { ratedW: 100, bypassSections: 1, widthM: width, lengthM: length };
  const points = modulePoints(panelGroup({ module, at: { eastM, northM, heightM } }), tilt, azimuth, {
    across,
    along: across,
  });
  const light = new Float64Array(points.length / 3);
  const obstacles = prepareObstacles(panel.obstacles.map((from) => obstacle(from as TruthObstacle)));
  lightOnPoints(obstacles, pointCloud(points), panel.sunAzimuth, panel.sunElevation, light);
  return light.reduce((dark, share) => dark + (share === 0 ? 1 : 0), 0) / light.length;
}

test.each([
  { across: 150, tolerance: 0.005, why: "most of one row of 150 points; the reference has 300 × 300 or more" },
  { across: 5, tolerance: 0.15, why: "a shadow whose edge runs along a row of 5 points is off by most of a row" },
])("the shaded part of a panel, $across points across", ({ across, tolerance, why }) => {
  let worst = 0;
  // A mast of a few centimetres falls between the points of a sparse grid.
  const panels = truth.panels.filter((panel) => across > 40 || panel.obstacles.every((o) => o.kind !== "cylinder"));
  for (const panel of panels) {
    const off = Math.abs(blockedShare(panel, across) - panel.blockedFraction);
    if (panel.blockedFraction === 0 || panel.blockedFraction === 1) expect(off).toBe(0);
    worst = Math.max(worst, off);
  }
  const n = panels.length;
  record({ what: `shaded part of a panel, ${across} × ${across} points`, source, tolerance, why, worst, unit: "", n });
  expect(n).toBeGreaterThan(20);
  expect(worst).toBeLessThan(tolerance);
});

test("a sphere takes (R/D)² cos θ of the sky", () => {
  let worst = 0;
  let n = 0;
  for (const fact of truth.closedForm) {
    if (fact.skyViewLossHorizontalPoint === undefined) continue;
    const sphere = obstacle({
      kind: "tree",
      bearing: 0,
      distance: fact.horizontalDistance!,
      height: fact.centreHeight! + fact.sphereRadius!,
      crownRadius: fact.sphereRadius!,
      trunkRadius: 0.01,
    });
    const point = Float64Array.of(0, 0, fact.pointHeight!);
    const distanceSq = fact.horizontalDistance! ** 2 + (fact.centreHeight! - fact.pointHeight!) ** 2;
    for (const tiltDeg of [0, 20, 50]) {
      // Tilted towards the sphere and, as far as it stays wholly before the plane, away from it.
      const towards = Math.sin((fact.centreElevation! + tiltDeg) * RAD_PER_DEG);
      const share = skyViewShare(prepareObstacles([sphere]), point, tiltDeg, 0);
      const seenShare = (1 + Math.cos(tiltDeg * RAD_PER_DEG)) / 2;
      const loss = (fact.sphereRadius! ** 2 / distanceSq) * towards;
      worst = Math.max(worst, Math.abs((1 - share) * seenShare - loss));
      if (tiltDeg === 0) expect(loss).toBeCloseTo(fact.skyViewLossHorizontalPoint, 5);
      n++;
    }
  }
  const tolerance = 0.001;
  const why = "the sky is seen in cells of 1.25° × 2.5°; a centimetre of trunk is in the way too";
  record({
    what: "sky light lost to a sphere",
    source: "cosine law (closed form)",
    tolerance,
    why,
    worst,
    unit: "",
    n,
  });
  expect(n).toBe(9);
  expect(worst).toBeLessThan(tolerance);
});

test("shadows on level ground are as long as trigonometry says", () => {
  let worst = 0;
  let n = 0;
  for (const fact of truth.closedForm) {
    if (fact.length === undefined) continue;
    const wall = Obstacle.parse({
      kind: "box",
      id: "wall",
      eastM: 0,
      northM: -0.05,
      heightM: fact.H,
      lengthM: 100,
      widthM: 0.1,
      headingDeg: 90,
    });
    const obstacles = prepareObstacles([wall]);
    // The wall's face is at 0; its shadow at the sun's noon ends where light comes back.
    let low = 0;
    let high = 100;
    while (high - low > 1e-6) {
      const middle = (low + high) / 2;
      const light = lightThrough(obstacles, { eastM: 0, northM: middle, upM: 0 }, 180, fact.elevation!);
      if (light === 0) low = middle;
      else high = middle;
    }
    worst = Math.max(worst, Math.abs(low - fact.length));
    n++;
  }
  const tolerance = 0.0002;
  const why = "the table has four decimals";
  record({
    what: "length of a shadow",
    source: "H ÷ tan elevation (closed form)",
    tolerance,
    why,
    worst,
    unit: "m",
    n,
  });
  expect(n).toBe(5);
  expect(worst).toBeLessThan(tolerance);
});

test("an upright cylinder hides the bearings and heights of its closed form", () => {
  let worst = 0;
  let n = 0;
  for (const fact of truth.closedForm) {
    if (fact.halfWidthDeg === undefined) continue;
    const { distance, radius, height } = fact as { distance: number; radius: number; height: number };
    const mast = prepareObstacles([obstacle({ kind: "cylinder", bearing: 90, distance, radius, height })]);
    const point = { eastM: 0, northM: 0, upM: fact.pointHeight! };
    const hidden = (aside: number, up: number) => lightThrough(mast, point, 90 + aside, up) === 0;
    const edges = [
      { found: edge((aside) => hidden(aside, 10), 0, 40), wanted: fact.halfWidthDeg },
      { found: edge((up) => hidden(0, up), 0, 89), wanted: fact.maxBlockedElevationOnAxis! },
      {
        found: edge((up) => hidden(fact.halfWidthDeg! / 2, up), 0, 89),
        wanted: fact.maxBlockedElevationAtHalfOfHalfWidth!,
      },
    ];
    for (const { found, wanted } of edges) {
      worst = Math.max(worst, Math.abs(found - wanted));
      n++;
    }
  }
  const tolerance = 0.0001;
  const why = "the table has four decimals";
  record({ what: "edges of a mast", source: "asin(r/d), atan (closed form)", tolerance, why, worst, unit: "°", n });
  expect(n).toBe(6);
  expect(worst).toBeLessThan(tolerance);
});

/** Where a yes turns into a no. */
function edge(isHidden: (at: number) => boolean, low: number, high: number): number {
  while (high - low > 1e-7) {
    const middle = (low + high) / 2;
    if (isHidden(middle)) low = middle;
    else high = middle;
  }
  return low;
}
