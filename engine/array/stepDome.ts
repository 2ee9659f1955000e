import type { SkyLight } from "../sky/splitDiffuse.ts";
import { AIR_C, DOME_LIGHT_SLOTS, type DomeLight, EVEN_WM2, GHI_WM2, SUN_WM2 } from "./domeLight.ts";
import { perezBin, perezHorizonShare, perezSunShare } from "./perez.ts";
import {
  AIR_PER_EXTRATERRESTRIAL,
  DOME_SLOTS,
  KAPPA_Z3,
  PER_EXTRATERRESTRIAL,
  PER_LEVEL,
  type PreparedDome,
  ZENITH_RAD,
} from "./skyDome.ts";

/**
 * Sorts the light of a member by where on the dome it comes from, once for all planes: a share `s` of the sky's light comes from beside
 * the sun and goes with the beam, the rest is even. `s` is 0 (isotropic), dni ÷ the light above the air (Hay–Davies), or Perez's F1;
 * Perez adds his F2 along the horizon.
 * @param light one value per step
 * @param airTempC one value per step
 * @param first where the member's first step stands in `out`
 * @see B. Liu & R. Jordan, Solar Energy 7 (1963) 53–74; J. Hay & J. Davies, Proc. First Canadian Solar Radiation Data
 *   Workshop, 1980, 59–72; R. Perez et al., Solar Energy 44 (1990) 271–289
 */
export function stepDome(
  dome: PreparedDome,
  light: SkyLight,
  airTempC: Float64Array,
  out: DomeLight,
  first: number,
): void {
  const { rows, horizonWm2 } = out;
  const fixed = dome.rows;
  const { ghiWm2, dniWm2, dhiWm2 } = light;
  const isHayDavies = dome.transposition === "hayDavies";
  const isPerez = dome.transposition === "perez";
  const steps = ghiWm2.length;
  for (let i = 0, at = 0, to = first * DOME_LIGHT_SLOTS; i < steps; i++, at += DOME_SLOTS, to += DOME_LIGHT_SLOTS) {
    const ghi = ghiWm2[i]!;
    rows[to + GHI_WM2] = ghi;
    rows[to + AIR_C] = airTempC[i]!;
    if (ghi <= 0) continue;
    const dni = dniWm2[i]!;
    const dhi = dhiWm2[i]!;
    let sunShare = 0;
    if (isHayDavies) {
      sunShare = Math.min(1, dni * 0.001 * fixed[at + PER_EXTRATERRESTRIAL]!);
    } else if (isPerez) {
      horizonWm2[first + i] = 0;
      if (dhi > 0) {
        const brightness = dhi * 0.001 * fixed[at + AIR_PER_EXTRATERRESTRIAL]!;
        const zenithRad = fixed[at + ZENITH_RAD]!;
        const bin = perezBin(fixed[at + KAPPA_Z3]!, dni, dhi);
        sunShare = perezSunShare(bin, brightness, zenithRad);
        horizonWm2[first + i] = dhi * perezHorizonShare(bin, brightness, zenithRad);
      }
    }
    const besideSunWm2 = dhi * sunShare;
    rows[to + SUN_WM2] = dni + besideSunWm2 * fixed[at + PER_LEVEL]!;
    rows[to + EVEN_WM2] = dhi - besideSunWm2;
  }
}
