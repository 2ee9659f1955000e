import { RAD_PER_DEG } from "../angle.ts";
import type { Models } from "../scenario/models.ts";
import { airMass } from "../sky/clearSky.ts";
import { roundToGrid } from "./roundToGrid.ts";

/** Which transposition a plane uses, as a number that a step can switch on. */
export const ISOTROPIC = 0;
export const HAY_DAVIES = 1;
export const PEREZ = 2;

/** Sun heights under which beam ratios stop growing: 89° from the zenith for Hay and Davies, 85° for Perez. */
const HAY_DAVIES_LOWEST_COS = 0.01745;
const PEREZ_LOWEST_COS = Math.cos(85 * RAD_PER_DEG);
/** Perez's weight of the zenith angle (radians, cubed) in the sky's clearness. */
const PEREZ_KAPPA = 1.041;

/** What a plane's light depends on besides the sky's; one value per step. */
export interface PreparedPlane {
  readonly model: number;
  /** Cosine of the sun's angle on the plane, 0 when the sun is behind it or down. */
  readonly cosIncidence: Float64Array;
  /** What light from beside the sun becomes on the plane, as a share of that on the level. */
  readonly beamRatio: Float64Array;
  /** 1000 ÷ the light above the air, m²/kW: turns beam into Hay and Davies's anisotropy. */
  readonly perExtraterrestrial: Float64Array;
  /** Share of even sky light that falls on the plane, obstacles taken off. */
  readonly skyShare: Float64Array;
  /** Share of level light that the ground throws onto the plane. */
  readonly groundShare: Float64Array;
  /** Sine of the tilt, obstacles taken off: what the horizon's band adds (Perez). */
  readonly horizonShare: Float64Array;
  /** Sun's angle from the zenith, radians, and Perez's κ z³ (Perez; else empty). */
  readonly zenithRad: Float64Array;
  readonly kappaZ3: Float64Array;
  /** 1000 × air mass ÷ the light above the air, m²/kW (Perez; else empty). */
  readonly airPerExtraterrestrial: Float64Array;
}

/** An empty plane of `steps` steps, to be filled with `setPlaneStep`. */
export function emptyPlane(model: Models["transposition"], steps: number): PreparedPlane {
  const perez = model === "perez" ? steps : 0;
  return {
    model: model === "perez" ? PEREZ : model === "hayDavies" ? HAY_DAVIES : ISOTROPIC,
    cosIncidence: new Float64Array(steps),
    beamRatio: new Float64Array(steps),
    perExtraterrestrial: new Float64Array(steps),
    skyShare: new Float64Array(steps),
    groundShare: new Float64Array(steps),
    horizonShare: new Float64Array(steps),
    zenithRad: new Float64Array(perez),
    kappaZ3: new Float64Array(perez),
    airPerExtraterrestrial: new Float64Array(perez),
  };
}

/** What `setPlaneStep` needs to know of one step. */
export interface PlaneStep {
  readonly cosIncidence: number;
  readonly tiltDeg: number;
  readonly sunElevationDeg: number;
  readonly extraterrestrialWm2: number;
  readonly albedoShare: number;
  /** Share of the sky's light that gets past obstacles. */
  readonly skyViewShare: number;
}

/** Works out everything about step `i` that does not depend on the weather. The sun must be above the horizon. */
export function setPlaneStep(plane: PreparedPlane, i: number, step: PlaneStep): void {
  const cosIncidence = Math.max(0, step.cosIncidence);
  const cosZenith = Math.sin(step.sunElevationDeg * RAD_PER_DEG);
  const cosTilt = Math.cos(step.tiltDeg * RAD_PER_DEG);
  const lowest = plane.model === PEREZ ? PEREZ_LOWEST_COS : HAY_DAVIES_LOWEST_COS;
  plane.cosIncidence[i] = roundToGrid(cosIncidence);
  plane.beamRatio[i] = roundToGrid(cosIncidence / Math.max(cosZenith, lowest));
  plane.perExtraterrestrial[i] = roundToGrid(1000 / step.extraterrestrialWm2);
  plane.skyShare[i] = roundToGrid(((1 + cosTilt) / 2) * step.skyViewShare);
  plane.groundShare[i] = roundToGrid((step.albedoShare * (1 - cosTilt)) / 2);
  plane.horizonShare[i] = roundToGrid(Math.sin(step.tiltDeg * RAD_PER_DEG) * step.skyViewShare);
  if (plane.model === PEREZ) {
    const zenithRad = (90 - step.sunElevationDeg) * RAD_PER_DEG;
    plane.zenithRad[i] = roundToGrid(zenithRad);
    plane.kappaZ3[i] = roundToGrid(PEREZ_KAPPA * zenithRad ** 3);
    plane.airPerExtraterrestrial[i] = roundToGrid((1000 * airMass(step.sunElevationDeg)) / step.extraterrestrialWm2);
  }
}

/** Beam and what comes from beside the sun, on the plane, before shade and glass, W/m². */
export function planeBeamWm2(plane: PreparedPlane, i: number, dniWm2: number, dhiWm2: number): number {
  return dniWm2 * plane.cosIncidence[i]! + circumsolarWm2(plane, i, dniWm2, dhiWm2);
}

/**
 * All other light on the plane, W/m²: the rest of the sky, obstacles taken off, and the ground. Obstacles are taken to
 * leave the light from the ground alone.
 * @param beamWm2 that of `planeBeamWm2`: Perez's dark horizon may take from it, but all light together stays above 0
 */
export function planeDiffuseWm2(
  plane: PreparedPlane,
  i: number,
  ghiWm2: number,
  dniWm2: number,
  dhiWm2: number,
  beamWm2: number,
): number {
  return Math.max(openSkyWm2(plane, i, dniWm2, dhiWm2), -beamWm2) + ghiWm2 * plane.groundShare[i]!;
}

/**
 * Sky light that comes from beside the sun, on the plane, W/m². Shade and glass treat it as beam.
 * @see J. Hay & J. Davies, Proc. First Canadian Solar Radiation Data Workshop, 1980, 59–72; R. Perez et al.,
 *   Solar Energy 44 (1990) 271–289; isotropic (B. Liu & R. Jordan, 1963) has none
 */
export function circumsolarWm2(plane: PreparedPlane, i: number, dniWm2: number, dhiWm2: number): number {
  if (plane.model === HAY_DAVIES) {
    return dhiWm2 * plane.beamRatio[i]! * anisotropyShare(plane, i, dniWm2);
  }
  if (plane.model === PEREZ) return dhiWm2 * plane.beamRatio[i]! * perezSunShare(plane, i, dniWm2, dhiWm2);
  return 0;
}

/** The rest of the sky's light on the plane, W/m²: even sky and, with Perez, the horizon's band (which may be negative). */
export function openSkyWm2(plane: PreparedPlane, i: number, dniWm2: number, dhiWm2: number): number {
  if (plane.model === HAY_DAVIES) {
    return dhiWm2 * plane.skyShare[i]! * (1 - anisotropyShare(plane, i, dniWm2));
  }
  if (plane.model === PEREZ) {
    const evenWm2 = dhiWm2 * plane.skyShare[i]! * (1 - perezSunShare(plane, i, dniWm2, dhiWm2));
    return evenWm2 + dhiWm2 * plane.horizonShare[i]! * perezHorizonShare(plane, i, dniWm2, dhiWm2);
  }
  return dhiWm2 * plane.skyShare[i]!;
}

/** Share of beam that is left of the light above the air; never more than 1. */
function anisotropyShare(plane: PreparedPlane, i: number, dniWm2: number): number {
  return Math.min(1, dniWm2 * 0.001 * plane.perExtraterrestrial[i]!);
}

/** Clearness from which each bin holds, then F11, F12, F13, F21, F22, F23 (Perez 1990, table 6, all sites). */
const PEREZ_BINS = Float64Array.of(
  ...[1.0, -0.008, 0.588, -0.062, -0.06, 0.072, -0.022],
  ...[1.065, 0.13, 0.683, -0.151, -0.019, 0.066, -0.029],
  ...[1.23, 0.33, 0.487, -0.221, 0.055, -0.064, -0.026],
  ...[1.5, 0.568, 0.187, -0.295, 0.109, -0.152, -0.014],
  ...[1.95, 0.873, -0.392, -0.362, 0.226, -0.462, 0.001],
  ...[2.8, 1.132, -1.237, -0.412, 0.288, -0.823, 0.056],
  ...[4.5, 1.06, -1.6, -0.359, 0.264, -1.127, 0.131],
  ...[6.2, 0.678, -0.327, -0.25, 0.156, -1.377, 0.251],
);
const PEREZ_BIN_WIDTH = 7;

/** Where the bin of this sky's clearness begins in `PEREZ_BINS`. */
function perezBin(plane: PreparedPlane, i: number, dniWm2: number, dhiWm2: number): number {
  const kappaZ3 = plane.kappaZ3[i]!;
  const clearness = ((dhiWm2 + dniWm2) / dhiWm2 + kappaZ3) / (1 + kappaZ3);
  let bin = PEREZ_BINS.length - PEREZ_BIN_WIDTH;
  while (bin > 0 && clearness < PEREZ_BINS[bin]!) bin -= PEREZ_BIN_WIDTH;
  return bin;
}

function perezSunShare(plane: PreparedPlane, i: number, dniWm2: number, dhiWm2: number): number {
  if (!(dhiWm2 > 0)) return 0;
  const bin = perezBin(plane, i, dniWm2, dhiWm2);
  const brightness = dhiWm2 * 0.001 * plane.airPerExtraterrestrial[i]!;
  const f1 = PEREZ_BINS[bin + 1]! + PEREZ_BINS[bin + 2]! * brightness + PEREZ_BINS[bin + 3]! * plane.zenithRad[i]!;
  return Math.max(0, f1);
}

function perezHorizonShare(plane: PreparedPlane, i: number, dniWm2: number, dhiWm2: number): number {
  if (!(dhiWm2 > 0)) return 0;
  const bin = perezBin(plane, i, dniWm2, dhiWm2);
  const brightness = dhiWm2 * 0.001 * plane.airPerExtraterrestrial[i]!;
  return PEREZ_BINS[bin + 4]! + PEREZ_BINS[bin + 5]! * brightness + PEREZ_BINS[bin + 6]! * plane.zenithRad[i]!;
}
