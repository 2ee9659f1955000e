import { RAD_PER_DEG } from "../angle.ts";
import { toGrid } from "../grid.ts";
import { requireSameLength } from "../require.ts";
import { windowShare } from "../scenario/clockWindow.ts";
import { coolingOf } from "../scenario/coolingOf.ts";
import type { Models } from "../scenario/models.ts";
import type { Obstacle } from "../scenario/obstacle.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import { presentShare } from "../scenario/presence.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { lightOnPoints, pointCloud } from "../shade/lightThrough.ts";
import { type PreparedObstacles, prepareObstacles } from "../shade/prepareObstacles.ts";
import { SKY_ROWS, skyMaps, skyShareOnPlane } from "../shade/skyViewShare.ts";
import type { ClearSky } from "../sky/clearSky.ts";
import type { SunTrack } from "../sky/sunTrack.ts";
import { heatKPerWm2 } from "./heatKPerWm2.ts";
import { incidenceShare } from "./incidenceShare.ts";
import { modulePoints, SAMPLE_GRID, type SampleGrid } from "./modulePoints.ts";
import { type MountTrack, mountTrack } from "./mountTrack.ts";
import { panelAxes } from "./panelAxes.ts";
import { type PreparedGroup, preparedGroup } from "./preparedGroup.ts";
import { sectionLight, stringLayout } from "./sectionLight.ts";
import { DOME_SLOTS, type PreparedDome, prepareDome } from "./skyDome.ts";
import {
  BEAM_IS_FREE,
  HEAT_K_PER_WM2,
  INCIDENCE_SHARE,
  MEAN_SHARE,
  OUT_SHARE,
  SECTION_SHARE,
  SKY_SHARE,
} from "./slots.ts";
import { horizonPerSky, setPlane } from "./transposition.ts";

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
  const dome = prepareDome(models.transposition, sun.elevationDeg, clear.extraterrestrialWm2);
  return panels.map((group) => prepareGroup(group, prepared, models, grid, sun, dome, windMs));
}

/** How much of each step the group is there and set out; null where it always is. */
function outShare(group: PanelGroup, grid: TimeGrid): Float64Array | null {
  const there = presentShare(grid, group);
  if (group.out === undefined) return there;
  const out = windowShare(grid, group.out);
  return there === null ? out : out.map((share, i) => Math.min(share, there[i]!));
}

/**
 * Works out everything about a panel group that the weather of a member does not change: where it faces, what shades
 * it, how warm light makes it. Groups do not shade one another.
 * @param group with its cooling stated, or lying on no box
 * @param obstacles with one level of crowns, as planned, or three: as planned, darkest, lightest
 * @param sun one place per step, at the middle of each
 * @param dome of the same instants
 * @param windMs wind at the panels, one value per step
 * @throws RangeError if the arrays differ in length or the group cannot be wired
 */
export function prepareGroup(
  group: PanelGroup,
  obstacles: PreparedObstacles,
  models: Models,
  grid: TimeGrid,
  sun: SunTrack,
  dome: PreparedDome,
  windMs: Float64Array,
  sampleGrid: SampleGrid = SAMPLE_GRID,
): PreparedGroup {
  return placeGroup(group, faceGroup(group, models, grid, sun, dome, windMs), obstacles, sampleGrid);
}

/** What of a panel group does not depend on where on the site it stands: how it faces, when it is out, how warm light makes it. */
export interface FacedGroup {
  readonly models: Models;
  readonly sun: SunTrack;
  readonly dome: PreparedDome;
  readonly mount: MountTrack;
  /** One value per step: of the sun's angle on the plane, below 0 with the sun behind it; 0 while the sun is down. */
  readonly cosIncidence: Float64Array;
  readonly horizonPerSky: Float64Array;
  readonly sections: number;
  readonly stride: number;
  /** As in `PreparedGroup`, with nothing standing about. */
  readonly perStep: Float64Array;
}

/** The first half of `prepareGroup`, whose arguments these are: the same for all places to which a group may be moved. */
export function faceGroup(
  group: PanelGroup,
  models: Models,
  grid: TimeGrid,
  sun: SunTrack,
  dome: PreparedDome,
  windMs: Float64Array,
): FacedGroup {
  requireSameLength({
    middleMs: grid.middleMs,
    elevationDeg: sun.elevationDeg,
    dome: { length: dome.rows.length / DOME_SLOTS },
    windMs,
  });
  const { steps } = grid;
  const cooling = coolingOf(group, []);
  const mount = mountTrack(group.mount, grid, sun);
  const sections = stringLayout(group, 0).sectionsPerString;
  const normals = mount.facings.map((facing) => panelAxes(facing.tiltDeg, facing.azimuthDeg).normal);
  const out = outShare(group, grid);
  const stride = SECTION_SHARE + sections;
  const isPerez = dome.transposition === "perez";
  const ofHorizon = new Float64Array(isPerez ? steps : 0);
  const cosines = new Float64Array(steps);
  const perStep = new Float64Array(steps * stride);
  for (let i = 0; i < steps; i++) {
    const at = i * stride;
    const elevationDeg = sun.elevationDeg[i]!;
    if (!(elevationDeg > 0)) continue; // all shares stay 0
    const azimuthDeg = sun.azimuthDeg[i]!;
    const facing = mount.facingAt[i]!;
    const normal = normals[facing]!;
    const levelShare = Math.cos(elevationDeg * RAD_PER_DEG);
    const cosIncidence =
      levelShare * Math.sin(azimuthDeg * RAD_PER_DEG) * normal[0] +
      levelShare * Math.cos(azimuthDeg * RAD_PER_DEG) * normal[1] +
      Math.sin(elevationDeg * RAD_PER_DEG) * normal[2];
    cosines[i] = cosIncidence;
    const { tiltDeg } = mount.facings[facing]!;
    setPlane({ cosIncidence, tiltDeg, albedoShare: models.albedoShare, skyViewShare: 1 }, perStep, at);
    if (isPerez) ofHorizon[i] = horizonPerSky(tiltDeg);
    perStep[at + OUT_SHARE] = out === null ? 1 : toGrid(out[i]!);
    perStep[at + INCIDENCE_SHARE] = toGrid(incidenceShare(models.incidence, cosIncidence));
    perStep[at + HEAT_K_PER_WM2] = toGrid(heatKPerWm2(models.cellTemperature, cooling, windMs[i]!));
    perStep[at + BEAM_IS_FREE] = 1;
    perStep.fill(1, at + MEAN_SHARE, at + stride);
  }
  return { models, sun, dome, mount, cosIncidence: cosines, horizonPerSky: ofHorizon, sections, stride, perStep };
}

/**
 * The second half of `prepareGroup`: what stands between the sun and the group at its place.
 * @param group as it was faced, but for its place and its cable
 * @param skyRows how finely the sky behind the obstacles is looked at, see `skyMaps`
 */
export function placeGroup(
  group: PanelGroup,
  faced: FacedGroup,
  obstacles: PreparedObstacles,
  sampleGrid: SampleGrid = SAMPLE_GRID,
  skyRows = SKY_ROWS,
): PreparedGroup {
  const { models, sun, dome, mount, cosIncidence, horizonPerSky: ofHorizon, sections, stride } = faced;
  const steps = cosIncidence.length;
  const anyObstacle = obstacles.trees.length + obstacles.boxes.length + obstacles.horizons.length > 0;
  const crownStride = stride - SKY_SHARE;
  const crowns = () => new Float64Array(2 * steps * crownStride);
  const ofAll = { dome, horizonPerSky: ofHorizon, stride, crownStride, sections };
  const free = { ...ofAll, perStep: faced.perStep, crowns: crowns(), unshaded: null };
  const unshaded = preparedGroup(group, models, free);
  const clouds = mount.facings.map((facing) =>
    pointCloud(modulePoints(group, facing.tiltDeg, facing.azimuthDeg, sampleGrid)),
  );
  const points = clouds[0]!.pointsM.length / 3;
  const layout = stringLayout(group, points);
  if (!anyObstacle) return unshaded;
  const isArea = group.module.wiring === "area";
  const levels = Array.from({ length: obstacles.levels }, (_, level) => level);
  const skyViews = skyViewShares(group, obstacles, models, mount.facings, skyRows);
  const openSky = mount.facings.map(({ tiltDeg }) => (1 + Math.cos(tiltDeg * RAD_PER_DEG)) / 2);
  const shaded = levels.map(() => faced.perStep.slice());
  const light = new Float64Array(levels.length * points);
  const lightOf = levels.map((level) => light.subarray(level * points, (level + 1) * points));
  for (let i = 0; i < steps; i++) {
    const at = i * stride;
    const elevationDeg = sun.elevationDeg[i]!;
    if (!(elevationDeg > 0)) continue;
    const facing = mount.facingAt[i]!;
    const isShaded =
      points > 0 &&
      cosIncidence[i]! > 0 &&
      lightOnPoints(obstacles, clouds[facing]!, sun.azimuthDeg[i]!, elevationDeg, light);
    for (const level of levels) {
      const perStep = shaded[level]!;
      perStep[at + SKY_SHARE] = toGrid(openSky[facing]! * skyViews[level]![facing]!);
      if (!isShaded) continue;
      perStep[at + BEAM_IS_FREE] = 0;
      perStep[at + MEAN_SHARE] = sectionLight(lightOf[level]!, layout, isArea, perStep, at + SECTION_SHARE);
    }
  }
  const [planned, darkest, lightest] = shaded;
  const otherCrowns = crowns();
  if (darkest !== undefined) setCrowns(planned!, darkest, stride, otherCrowns, 0);
  if (lightest !== undefined) setCrowns(planned!, lightest, stride, otherCrowns, crownStride);
  return preparedGroup(group, models, { ...ofAll, perStep: planned!, crowns: otherCrowns, unshaded });
}

/** Writes how much more each value from `SKY_SHARE` on is under other crowns than planned, in every step from `to` on. */
function setCrowns(planned: Float64Array, other: Float64Array, stride: number, crowns: Float64Array, to: number): void {
  const crownStride = stride - SKY_SHARE;
  for (let at = SKY_SHARE, crownAt = to; at < planned.length; at += stride, crownAt += 2 * crownStride) {
    for (let k = 0; k < crownStride; k++) crowns[crownAt + k] = other[at + k]! - planned[at + k]!;
  }
}

/**
 * Share of the sky's light that gets past the obstacles, for each level of crowns and in it for each facing. The sky is looked at once, from the middles of
 * the modules as the first facing places them: a row that turns about its own middle sees nearly the same.
 */
function skyViewShares(
  group: PanelGroup,
  obstacles: PreparedObstacles,
  models: Models,
  facings: readonly { readonly tiltDeg: number; readonly azimuthDeg: number }[],
  skyRows: number,
): number[][] {
  if (group.count === 0 || models.diffuseShade === "none") {
    return Array.from({ length: obstacles.levels }, () => facings.map(() => 1));
  }
  const whole = { ...group, module: { ...group.module, bypassSections: 1 } };
  const middles = modulePoints(whole, facings[0]!.tiltDeg, facings[0]!.azimuthDeg, { across: 1, along: 1 });
  const maps = skyMaps(obstacles, middles, skyRows);
  return maps.map((map) => facings.map((facing) => skyShareOnPlane(map, facing.tiltDeg, facing.azimuthDeg)));
}
