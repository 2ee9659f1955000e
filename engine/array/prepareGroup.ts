import { RAD_PER_DEG } from "../angle.ts";
import { requireSameLength } from "../require.ts";
import { windowShare } from "../scenario/clockWindow.ts";
import type { Models } from "../scenario/models.ts";
import type { Obstacle } from "../scenario/obstacle.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { pointCloud } from "../shade/lightThrough.ts";
import { type PreparedObstacles, prepareObstacles } from "../shade/prepareObstacles.ts";
import { type SkyMap, skyMap, skyShareOnPlane } from "../shade/skyViewShare.ts";
import type { ClearSky } from "../sky/clearSky.ts";
import type { SunTrack } from "../sky/sunTrack.ts";
import { copperOhmPerM } from "./copperOhmPerM.ts";
import { heatKPerWm2 } from "./heatKPerWm2.ts";
import { incidenceShare } from "./incidenceShare.ts";
import { modulePoints, SAMPLE_GRID, type SampleGrid } from "./modulePoints.ts";
import { mountTrack } from "./mountTrack.ts";
import { panelAxes } from "./panelAxes.ts";
import { roundToGrid } from "./roundToGrid.ts";
import { sectionLight, stringLayout } from "./sectionLight.ts";
import { emptyPlane, type PreparedPlane, setPlaneStep } from "./transposition.ts";

/** Light at which modules are rated, W/m². */
const RATED_WM2 = 1000;
/** Volts lost in a bypass diode that carries the current past a dark section (common practice, no source). */
const BYPASS_V = 0.5;
/**
 * Volts by which the panel must stand above the bank before a controller that only steps down can track it (common
 * practice, no source; makers' manuals name 1 V in running, more to start).
 */
const STEP_DOWN_HEADROOM_V = 1;

/** A panel group ready to be stepped: everything that the weather of a member does not change. */
export interface PreparedGroup {
  readonly id: string;
  /** What turns the sky's light into light on the plane; one value per step. */
  readonly plane: PreparedPlane;
  /** Share of beam light that gets through the glass; one value per step. */
  readonly incidenceShare: Float64Array;
  /** Cells above air, K m²/W; one value per step. */
  readonly heatKPerWm2: Float64Array;
  /** Share of each step during which the group is set out. */
  readonly outShare: Float64Array;
  /** Mean share of the beam that reaches the modules; one value per step. */
  readonly meanShare: Float64Array;
  /** `sections` values per step: share of the beam on the k-th brightest section, mean of the strings, k = 1…sections. */
  readonly sectionShare: Float64Array;
  /** Bypass sections in series in one string; 1 when the group is wired for even output. */
  readonly sections: number;
  readonly perSection: number;
  /** Rated power of the group for each W/m², and the current of its strings at the power point, A per W/m². */
  readonly ratedWPerWm2: number;
  readonly impAPerWm2: number;
  /** Share of the power that the losses leave. */
  readonly keptShare: number;
  /** Of one string: volts at the power point and open, at 25 °C. */
  readonly vmpV: number;
  readonly vocV: number;
  readonly powerTempCoeffPerK: number;
  readonly vocTempCoeffPerK: number;
  /** A bypassed section's drop, V, and as a share of the string's `vmpV`. */
  readonly bypassV: number;
  readonly bypassShare: number;
  readonly isPwm: boolean;
  readonly controllerAtBank: boolean;
  /** Out and back, Ω. */
  readonly cableOhm: number;
  readonly efficiencyShare: number;
  /** A; Infinity when the controller has no limit. */
  readonly maxChargeA: number;
  /** Volts above the bank that a string must reach to be used; −Infinity for a controller that can also step up. */
  readonly headroomV: number;
  /** The same group with nothing standing about; null when nothing does. */
  readonly unshaded: PreparedGroup | null;
}

/** All panel groups of a scenario, ready to be stepped. Arguments as in `prepareGroup`. */
export function prepareGroups(
  panels: readonly PanelGroup[],
  obstacles: readonly Obstacle[],
  models: Models,
  grid: TimeGrid,
  sun: SunTrack,
  clear: ClearSky,
  windMs: Float64Array,
): PreparedGroup[] {
  const prepared = prepareObstacles(obstacles);
  return panels.map((group) => prepareGroup(group, prepared, models, grid, sun, clear, windMs));
}

/**
 * Works out everything about a panel group that the weather of a member does not change: where it faces, what shades
 * it, how warm light makes it. Groups do not shade one another.
 * @param sun one place per step, at the middle of each
 * @param clear the same instants; only the light above the air is read
 * @param windMs wind at the panels, one value per step
 * @throws RangeError if the arrays differ in length or the group cannot be wired
 */
export function prepareGroup(
  group: PanelGroup,
  obstacles: PreparedObstacles,
  models: Models,
  grid: TimeGrid,
  sun: SunTrack,
  clear: Pick<ClearSky, "extraterrestrialWm2">,
  windMs: Float64Array,
  sampleGrid: SampleGrid = SAMPLE_GRID,
): PreparedGroup {
  requireSameLength({
    middleMs: grid.middleMs,
    elevationDeg: sun.elevationDeg,
    extraterrestrialWm2: clear.extraterrestrialWm2,
    windMs,
  });
  const { steps } = grid;
  const anyObstacle = obstacles.trees.length + obstacles.boxes.length + obstacles.horizons.length > 0;
  const mount = mountTrack(group.mount, grid, sun);
  const clouds = mount.facings.map((facing) =>
    pointCloud(modulePoints(group, facing.tiltDeg, facing.azimuthDeg, sampleGrid)),
  );
  const points = clouds[0]!.pointsM.length / 3;
  const layout = stringLayout(group, points);
  const sections = layout.sectionsPerString;
  const isArea = group.module.wiring === "area";
  const skyViews = skyViewShares(group, obstacles, models, mount.facings, anyObstacle);
  const normals = mount.facings.map((facing) => panelAxes(facing.tiltDeg, facing.azimuthDeg).normal);

  const plane = emptyPlane(models.transposition, steps);
  const freePlane = anyObstacle ? emptyPlane(models.transposition, steps) : plane;
  const incidence = new Float64Array(steps);
  const heat = new Float64Array(steps);
  const meanShare = new Float64Array(steps).fill(1);
  const sectionShare = new Float64Array(steps * sections).fill(1);
  const outShare = group.out === undefined ? new Float64Array(steps).fill(1) : windowShare(grid, group.out);
  const light = new Float64Array(points);

  for (let i = 0; i < steps; i++) {
    outShare[i] = roundToGrid(outShare[i]!);
    const elevationDeg = sun.elevationDeg[i]!;
    if (!(elevationDeg > 0)) continue;
    const azimuthDeg = sun.azimuthDeg[i]!;
    const facing = mount.facingAt[i]!;
    const normal = normals[facing]!;
    const level = Math.cos(elevationDeg * RAD_PER_DEG);
    const cosIncidence =
      level * Math.sin(azimuthDeg * RAD_PER_DEG) * normal[0] +
      level * Math.cos(azimuthDeg * RAD_PER_DEG) * normal[1] +
      Math.sin(elevationDeg * RAD_PER_DEG) * normal[2];
    const step = {
      cosIncidence,
      tiltDeg: mount.facings[facing]!.tiltDeg,
      sunElevationDeg: elevationDeg,
      extraterrestrialWm2: clear.extraterrestrialWm2[i]!,
      albedoShare: models.albedoShare,
      skyViewShare: 1,
    };
    setPlaneStep(freePlane, i, step);
    if (anyObstacle) setPlaneStep(plane, i, { ...step, skyViewShare: skyViews[facing]! });
    incidence[i] = roundToGrid(incidenceShare(models.incidence, cosIncidence));
    heat[i] = roundToGrid(heatKPerWm2(models.cellTemperature, group.cooling, windMs[i]!));
    if (anyObstacle && points > 0 && cosIncidence > 0) {
      meanShare[i] = sectionLight(
        obstacles,
        clouds[facing]!,
        layout,
        isArea,
        azimuthDeg,
        elevationDeg,
        light,
        sectionShare,
        i * sections,
      );
    }
  }

  const { module, controller } = group;
  const strings = group.count / group.inSeries;
  const cable = controller.cable;
  const vmpV = module.vmpV * group.inSeries;
  const free = {
    id: group.id,
    plane: freePlane,
    incidenceShare: incidence,
    heatKPerWm2: heat,
    outShare,
    meanShare: new Float64Array(steps).fill(1),
    sectionShare: new Float64Array(steps * sections).fill(1),
    sections,
    perSection: 1 / sections,
    ratedWPerWm2: (module.ratedW * group.count) / RATED_WM2,
    impAPerWm2: (module.impA * strings) / RATED_WM2,
    keptShare: group.losses.reduce((kept, loss) => kept * (1 - loss.share), 1),
    vmpV,
    vocV: module.vocV * group.inSeries,
    powerTempCoeffPerK: module.powerTempCoeffPerK,
    vocTempCoeffPerK: module.vocTempCoeffPerK,
    bypassV: BYPASS_V,
    bypassShare: BYPASS_V / vmpV,
    isPwm: controller.kind === "pwm",
    controllerAtBank: controller.at === "bank",
    cableOhm: 2 * cable.oneWayM * copperOhmPerM(cable, cable.tempC),
    efficiencyShare: controller.efficiencyShare,
    maxChargeA: controller.maxChargeA ?? Number.POSITIVE_INFINITY,
    headroomV: controller.stepDownOnly ? STEP_DOWN_HEADROOM_V : Number.NEGATIVE_INFINITY,
    unshaded: null,
  };
  return anyObstacle ? { ...free, plane, meanShare, sectionShare, unshaded: free } : free;
}

/**
 * Share of the sky's light that gets past the obstacles, for each facing. The sky is looked at once, from the middles of
 * the modules as the first facing places them: a row that turns about its own middle sees nearly the same.
 */
function skyViewShares(
  group: PanelGroup,
  obstacles: PreparedObstacles,
  models: Models,
  facings: readonly { readonly tiltDeg: number; readonly azimuthDeg: number }[],
  anyObstacle: boolean,
): number[] {
  if (!anyObstacle || group.count === 0 || models.diffuseShade === "none") return facings.map(() => 1);
  const whole = { ...group, module: { ...group.module, bypassSections: 1 } };
  const middles = modulePoints(whole, facings[0]!.tiltDeg, facings[0]!.azimuthDeg, { across: 1, along: 1 });
  const map: SkyMap = skyMap(obstacles, middles);
  return facings.map((facing) => skyShareOnPlane(map, facing.tiltDeg, facing.azimuthDeg));
}
