import { RAD_PER_DEG } from "../angle.ts";
import { toGrid } from "../grid.ts";
import type { Models } from "../scenario/models.ts";
import { airMass } from "../sky/clearSky.ts";
import {
  AIR_PER_EXTRATERRESTRIAL,
  BEAM_RATIO,
  COS_INCIDENCE,
  GROUND_SHARE,
  HORIZON_SHARE,
  KAPPA_Z3,
  PER_EXTRATERRESTRIAL,
  PEREZ_SLOTS,
  SKY_SHARE,
  ZENITH_RAD,
} from "./slots.ts";

/** Sun heights under which beam ratios stop growing: 89° from the zenith for Hay and Davies, 85° for Perez. */
const HAY_DAVIES_LOWEST_COS = 0.01745;
const PEREZ_LOWEST_COS = Math.cos(85 * RAD_PER_DEG);
/** Perez's weight of the zenith angle (radians, cubed) in the sky's clearness. */
const PEREZ_KAPPA = 1.041;

/** What the light on a plane depends on besides the weather, at one moment with the sun up. */
export interface PlaneMoment {
  readonly cosIncidence: number;
  readonly tiltDeg: number;
  readonly sunElevationDeg: number;
  readonly extraterrestrialWm2: number;
  readonly albedoShare: number;
  /** Share of the sky's light that gets past obstacles. They are taken to leave the light from the ground alone. */
  readonly skyViewShare: number;
}

/**
 * Writes what a plane's light depends on besides the weather. On a plane, beam light is
 * `dni × COS_INCIDENCE + dhi × BEAM_RATIO × s`, the rest `dhi × SKY_SHARE × (1 − s) + ghi × GROUND_SHARE`, where s is
 * the share of sky light that comes from beside the sun: 0 (isotropic), dni ÷ the light above the air (Hay–Davies), or
 * `perezSunShare`; Perez adds `perezHorizonShare × dhi`.
 * @param perStep,at where the moment's values begin
 * @param perez,perezAt the same for the values of Perez alone; not touched by other models
 * @see B. Liu & R. Jordan, Solar Energy 7 (1963) 53–74; J. Hay & J. Davies, Proc. First Canadian Solar Radiation Data
 *   Workshop, 1980, 59–72; R. Perez et al., Solar Energy 44 (1990) 271–289
 */
export function setPlane(
  model: Models["transposition"],
  moment: PlaneMoment,
  perStep: Float64Array,
  at: number,
  perez: Float64Array,
  perezAt: number,
): void {
  const cosIncidence = Math.max(0, moment.cosIncidence);
  const cosZenith = Math.sin(moment.sunElevationDeg * RAD_PER_DEG);
  const cosTilt = Math.cos(moment.tiltDeg * RAD_PER_DEG);
  const lowest = model === "perez" ? PEREZ_LOWEST_COS : HAY_DAVIES_LOWEST_COS;
  perStep[at + COS_INCIDENCE] = toGrid(cosIncidence);
  perStep[at + BEAM_RATIO] = toGrid(cosIncidence / Math.max(cosZenith, lowest));
  perStep[at + PER_EXTRATERRESTRIAL] = toGrid(1000 / moment.extraterrestrialWm2);
  perStep[at + SKY_SHARE] = toGrid(((1 + cosTilt) / 2) * moment.skyViewShare);
  perStep[at + GROUND_SHARE] = toGrid((moment.albedoShare * (1 - cosTilt)) / 2);
  if (model !== "perez") return;
  const zenithRad = (90 - moment.sunElevationDeg) * RAD_PER_DEG;
  perez[perezAt + HORIZON_SHARE] = toGrid(Math.sin(moment.tiltDeg * RAD_PER_DEG) * moment.skyViewShare);
  perez[perezAt + ZENITH_RAD] = toGrid(zenithRad);
  perez[perezAt + KAPPA_Z3] = toGrid(PEREZ_KAPPA * zenithRad ** 3);
  perez[perezAt + AIR_PER_EXTRATERRESTRIAL] = toGrid(
    (1000 * airMass(moment.sunElevationDeg)) / moment.extraterrestrialWm2,
  );
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
function perezBin(perez: Float64Array, i: number, dniWm2: number, dhiWm2: number): number {
  const kappaZ3 = perez[i * PEREZ_SLOTS + KAPPA_Z3]!;
  const clearness = ((dhiWm2 + dniWm2) / dhiWm2 + kappaZ3) / (1 + kappaZ3);
  let bin = PEREZ_BINS.length - PEREZ_BIN_WIDTH;
  while (bin > 0 && clearness < PEREZ_BINS[bin]!) bin -= PEREZ_BIN_WIDTH;
  return bin;
}

/** Perez's F1: share of sky light that comes from beside the sun. Arithmetic only; `dhiWm2` above 0. */
export function perezSunShare(perez: Float64Array, i: number, dniWm2: number, dhiWm2: number): number {
  const bin = perezBin(perez, i, dniWm2, dhiWm2);
  const brightness = dhiWm2 * 0.001 * perez[i * PEREZ_SLOTS + AIR_PER_EXTRATERRESTRIAL]!;
  const zenithRad = perez[i * PEREZ_SLOTS + ZENITH_RAD]!;
  return Math.max(0, PEREZ_BINS[bin + 1]! + PEREZ_BINS[bin + 2]! * brightness + PEREZ_BINS[bin + 3]! * zenithRad);
}

/** Perez's F2 on the plane: the horizon's band as a share of sky light, negative when the horizon is dark. As above. */
export function perezHorizonShare(perez: Float64Array, i: number, dniWm2: number, dhiWm2: number): number {
  const bin = perezBin(perez, i, dniWm2, dhiWm2);
  const brightness = dhiWm2 * 0.001 * perez[i * PEREZ_SLOTS + AIR_PER_EXTRATERRESTRIAL]!;
  const zenithRad = perez[i * PEREZ_SLOTS + ZENITH_RAD]!;
  const f2 = PEREZ_BINS[bin + 4]! + PEREZ_BINS[bin + 5]! * brightness + PEREZ_BINS[bin + 6]! * zenithRad;
  return f2 * perez[i * PEREZ_SLOTS + HORIZON_SHARE]!;
}
