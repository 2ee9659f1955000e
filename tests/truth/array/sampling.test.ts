import { expect, test } from "vitest";
import { modulePoints, SAMPLE_GRID, type SampleGrid } from "../../../engine/array/modulePoints.ts";
import type { PreparedGroup } from "../../../engine/array/preparedGroup.ts";
import { prepareGroup } from "../../../engine/array/prepareGroup.ts";
import { prepareDome } from "../../../engine/array/skyDome.ts";
import { Models } from "../../../engine/scenario/models.ts";
import { Obstacle } from "../../../engine/scenario/obstacle.ts";
import type { PanelGroup } from "../../../engine/scenario/panelGroup.ts";
import { timeGrid } from "../../../engine/scenario/timeGrid.ts";
import { lightOnPoints, pointCloud } from "../../../engine/shade/lightThrough.ts";
import { type PreparedObstacles, prepareObstacles } from "../../../engine/shade/prepareObstacles.ts";
import { clearSky } from "../../../engine/sky/clearSky.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";
import { panelGroup, perfect, shadeStep } from "../../engine/array/oneGroup.ts";
import { groupBusW } from "../../groupBusW.ts";
import { record } from "../record.ts";

const laid = timeGrid({ start: "2026-06-20T00:00", end: "2026-06-21T00:00", stepMinutes: 10 }, "America/New_York");
if (!laid.ok) throw new Error(laid.problems[0]!.message);
const { grid } = laid;
const sun = sunTrack(40, -75, grid.middleMs);
const clear = clearSky(sun, grid.middleMs, -75, 100, 3.5);
const airTempC = new Float64Array(grid.steps).fill(22);

const tree = { kind: "tree", crownBaseM: 2, crownRadiusM: 3, trunkRadiusM: 0.2 } as const;
const sites = [
  { name: "tree to the south", obstacles: [{ ...tree, id: "a", eastM: 0, northM: -3.5, heightM: 10 }] },
  { name: "tree to the west", obstacles: [{ ...tree, id: "a", eastM: -8, northM: -3, heightM: 12 }] },
  { name: "tree to the east", obstacles: [{ ...tree, id: "a", eastM: 6, northM: 1, heightM: 9 }] },
  {
    name: "mast and house",
    obstacles: [
      { kind: "box", id: "m", eastM: 0.5, northM: -3, heightM: 8, lengthM: 0.1, widthM: 0.1 },
      { kind: "box", id: "h", eastM: -9, northM: 0, heightM: 5, lengthM: 12, widthM: 6 },
    ],
  },
];
const mounts = [
  { kind: "flat", headingDeg: 0 },
  { kind: "fixed", tiltDeg: 35, azimuthDeg: 180 },
] as const;

const CELLS = { across: 2, along: 12 };
const PER_CELL = 6;
const DENSE = { across: CELLS.across * PER_CELL, along: CELLS.along * PER_CELL };

function groupOf(mount: (typeof mounts)[number], wiring: "series" | "area") {
  return panelGroup({
    count: 2,
    inSeries: 2,
    mount,
    module: { ratedW: 180, bypassSections: 3, wiring },
    controller: perfect(),
  });
}

function prepared(group: PanelGroup, obstacles: PreparedObstacles, points: SampleGrid): PreparedGroup {
  const windMs = new Float64Array(grid.steps).fill(2);
  const dome = prepareDome("hayDavies", sun.elevationDeg, clear.extraterrestrialWm2);
  return prepareGroup(group, obstacles, Models.parse({}), grid, sun, dome, windMs, points);
}

function dayWh(group: PreparedGroup): number {
  let wh = 0;
  for (let i = 0; i < grid.steps; i++) wh += groupBusW(group, i, clear, airTempC, 13.2) * grid.stepH;
  return wh;
}

/** The same with each section's light that of its darkest cell, a cell's being the mean over 36 points. */
function dayWhByCells(mount: (typeof mounts)[number], obstacles: PreparedObstacles): number {
  const group = groupOf(mount, "series");
  const { tiltDeg, azimuthDeg } = mount.kind === "flat" ? { tiltDeg: 0, azimuthDeg: mount.headingDeg } : mount;
  const cloud = pointCloud(modulePoints(group, tiltDeg, azimuthDeg, DENSE));
  const light = new Float64Array(cloud.pointsM.length / 3);
  const byCells = prepared(group, obstacles, DENSE);
  for (let i = 0; i < grid.steps; i++) {
    if (!(sun.elevationDeg[i]! > 0)) continue;
    lightOnPoints(obstacles, cloud, sun.azimuthDeg[i]!, sun.elevationDeg[i]!, light);
    const sections = Array.from({ length: byCells.sections }, (_, section) => {
      const cells = new Float64Array(CELLS.across * CELLS.along);
      for (let row = 0; row < DENSE.along; row++) {
        for (let column = 0; column < DENSE.across; column++) {
          const cell = Math.floor(row / PER_CELL) * CELLS.across + Math.floor(column / PER_CELL);
          cells[cell]! += light[(section * DENSE.along + row) * DENSE.across + column]! / PER_CELL ** 2;
        }
      }
      return Math.min(...cells);
    });
    shadeStep(
      byCells,
      i,
      sections.sort((a, b) => b - a),
    );
  }
  return dayWh(byCells);
}

test.each([
  {
    wiring: "series",
    tolerance: 0.009,
    why: "twelve points find the darkest cell nearly always; missing it errs high",
  },
  { wiring: "area", tolerance: 0.001, why: "72 points for two modules" },
] as const)("the points of a section stand for the whole of it, $wiring", ({ wiring, tolerance, why }) => {
  let worst = 0;
  let n = 0;
  for (const site of sites) {
    const obstacles = prepareObstacles(site.obstacles.map((from) => Obstacle.parse(from)));
    for (const mount of mounts) {
      const group = groupOf(mount, wiring);
      const dense = wiring === "series" ? dayWhByCells(mount, obstacles) : dayWh(prepared(group, obstacles, DENSE));
      const sampled = dayWh(prepared(group, obstacles, SAMPLE_GRID));
      worst = Math.max(worst, Math.abs(sampled / dense - 1));
      n++;
    }
  }
  const source =
    wiring === "series" ? "the same day by the darkest of 24 cells a section" : "the same day by 864 points a section";
  record({ what: `a shaded day by 12 points a section, ${wiring}`, source, tolerance, why, worst, unit: "", n });
  expect(n).toBe(8);
  expect(worst).toBeLessThan(tolerance);
});
