import { expect, test } from "vitest";
import { RAD_PER_DEG } from "../../../engine/angle.ts";
import { groupDetail } from "../../../engine/array/groupDetail.ts";
import { SAMPLE_GRID, type SampleGrid } from "../../../engine/array/modulePoints.ts";
import { prepareGroup } from "../../../engine/array/prepareGroup.ts";
import { prepareDome } from "../../../engine/array/skyDome.ts";
import { Models } from "../../../engine/scenario/models.ts";
import { Obstacle } from "../../../engine/scenario/obstacle.ts";
import { timeGrid } from "../../../engine/scenario/timeGrid.ts";
import { prepareObstacles } from "../../../engine/shade/prepareObstacles.ts";
import { clearSky } from "../../../engine/sky/clearSky.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";
import { panelGroup, perfect } from "../../engine/array/oneGroup.ts";
import { groupBusW } from "../../groupBusW.ts";
import truth from "../data/plane-days.json";
import { record } from "../record.ts";

type Scenario = (typeof truth.scenarios)[number];

const STEP_MINUTES = 5;

/** The sums of each day for one panel of the file, worked out here. */
function days(scenario: Scenario, index: number, sampleGrid: SampleGrid) {
  const { inputs } = scenario;
  const panel = inputs.panels[index]!;
  const [eastM, northM, heightM] = panel.rect.centre as [number, number, number];
  const laid = timeGrid(
    {
      start: inputs.startLocal,
      end: new Date(Date.parse(`${inputs.startLocal}Z`) + inputs.days * 86_400_000).toISOString().slice(0, 16),
      stepMinutes: STEP_MINUTES,
    },
    `Etc/GMT-${inputs.utcOffsetH}`,
  );
  if (!laid.ok) throw new Error(laid.problems[0]!.message);
  const { grid } = laid;
  const sun = sunTrack(inputs.lat, inputs.lon, grid.middleMs);
  const clear = clearSky(sun, grid.middleMs, inputs.lon, inputs.altM, inputs.linkeTurbidity);
  const obstacles = (inputs.obstacles ?? []).map((from, i) =>
    Obstacle.parse({
      kind: "tree",
      id: `t${i}`,
      eastM: from.distance * Math.sin(from.bearing * RAD_PER_DEG),
      northM: from.distance * Math.cos(from.bearing * RAD_PER_DEG),
      heightM: from.height,
      crownBaseM: from.height - 2 * from.crownRadius,
      crownRadiusM: from.crownRadius,
      trunkRadiusM: from.trunkRadius,
      transmittanceInLeafShare: 0,
    }),
  );
  const group = panelGroup({
    module: {
      ratedW: panel.count * panel.pStc,
      powerTempCoeffPerK: inputs.gamma,
      bypassSections: 3,
      widthM: panel.rect.width,
      lengthM: panel.rect.length,
      wiring: "area",
    },
    mount: { kind: "fixed", tiltDeg: panel.tilt, azimuthDeg: panel.azimuth },
    at: { eastM, northM, heightM },
    controller: perfect(),
  });
  const prepared = prepareGroup(
    group,
    prepareObstacles(obstacles),
    Models.parse({ incidence: "ashrae", diffuseShade: "none", albedoShare: inputs.albedo }),
    grid,
    sun,
    prepareDome("hayDavies", sun.elevationDeg, clear.extraterrestrialWm2),
    new Float64Array(grid.steps).fill(inputs.wind),
    sampleGrid,
  );
  const airTempC = grid.localMinute.map(
    (minute) => inputs.airMean + inputs.airAmp * Math.cos((2 * Math.PI * (minute / 60 - 15)) / 24),
  );
  const detail = groupDetail(grid.steps);
  const effectiveWhM2 = new Float64Array(inputs.days);
  const dcWh = new Float64Array(inputs.days);
  for (let i = 0; i < grid.steps; i++) {
    groupBusW(prepared, i, clear, airTempC, 13, detail);
    effectiveWhM2[grid.localDay[i]!]! += detail.effectiveWm2[i]! * grid.stepH;
    dcWh[grid.localDay[i]!]! += detail.dcW[i]! * grid.stepH;
  }
  return { effectiveWhM2, dcWh };
}

/** Largest relative difference from the file over its scenarios, panels and days, percent. */
function worstPercent(scenarios: readonly Scenario[], sampleGrid: SampleGrid) {
  let worst = 0;
  let n = 0;
  for (const scenario of scenarios) {
    for (const [index, panel] of scenario.panels.entries()) {
      const found = days(scenario, index, sampleGrid);
      for (let day = 0; day < scenario.inputs.days; day++) {
        worst = Math.max(
          worst,
          100 * Math.abs(found.effectiveWhM2[day]! / panel.effectiveWhM2[day]! - 1),
          100 * Math.abs(found.dcWh[day]! / panel.dcWh[day]! - 1),
        );
        n++;
      }
    }
  }
  return { worst, n };
}

const source = "pvlib irradiance functions at 1-minute steps (tests/truth/data/plane-days.json)";
const unit = "%";

test("a clear day's light and power on open panels", () => {
  const { worst, n } = worstPercent(
    truth.scenarios.filter((s) => s.inputs.obstacles === undefined),
    SAMPLE_GRID,
  );
  const tolerance = 0.02;
  record({ what: "a day's panel energy, open sky", source, tolerance, why: "5-minute steps", worst, unit, n });
  expect(n).toBe(12);
  expect(worst).toBeLessThan(tolerance);
});

test.each([
  { name: "45 × 15 points", sampleGrid: { across: 15, along: 15 }, tolerance: 0.02, why: "5-minute steps" },
  { name: "as sampled by default", sampleGrid: SAMPLE_GRID, tolerance: 0.16, why: "36 points a module" },
])("a clear day's light and power behind two trees, $name", ({ name, sampleGrid, tolerance, why }) => {
  const { worst, n } = worstPercent(
    truth.scenarios.filter((s) => s.inputs.obstacles !== undefined),
    sampleGrid,
  );
  record({ what: `a day's panel energy behind trees, ${name}`, source, tolerance, why, worst, unit, n });
  expect(n).toBe(6);
  expect(worst).toBeLessThan(tolerance);
});
