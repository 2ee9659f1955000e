import { RAD_PER_DEG } from "../angle.ts";
import type { Models } from "../scenario/models.ts";

/** Glass and what sticks to it: refractive index, extinction per metre, thickness in metres (De Soto 2006). */
const REFRACTIVE_INDEX = 1.526;
const EXTINCTION_PER_M = 4;
const GLASS_M = 0.002;
/** Coefficient of the ASHRAE form for one plain cover. */
const ASHRAE_B0 = 0.05;

/**
 * Share of beam light that gets through the front glass at an angle, 1 when it strikes head-on, 0 from 90° on.
 * @param cosIncidence cosine of the angle between the sun and the panel's normal, −1…1
 * @see W. De Soto, S. Klein, W. Beckman, Solar Energy 80 (2006) 78–88 (physical: Snell, Fresnel, Bouguer);
 *   A. Souka & H. Safwat, Solar Energy 10 (1966) 170–174, as ASHRAE 93-77 has it (ashrae)
 */
export function incidenceShare(model: Models["incidence"], cosIncidence: number): number {
  if (!(cosIncidence > 0)) return 0;
  if (model === "ashrae") return Math.max(0, 1 - ASHRAE_B0 * (1 / cosIncidence - 1));
  const angle = Math.acos(Math.min(1, cosIncidence));
  return glassTransmittance(angle) / glassTransmittance(0);
}

function glassTransmittance(angle: number): number {
  const refracted = Math.asin(Math.sin(angle) / REFRACTIVE_INDEX);
  const absorbed = Math.exp((-EXTINCTION_PER_M * GLASS_M) / Math.cos(refracted));
  // Fresnel's formulas are 0/0 head-on; below a thousandth of a degree they equal their limit.
  if (angle < 0.001 * RAD_PER_DEG) return absorbed * (1 - ((REFRACTIVE_INDEX - 1) / (REFRACTIVE_INDEX + 1)) ** 2);
  const across = (Math.sin(refracted - angle) / Math.sin(refracted + angle)) ** 2;
  const along = (Math.tan(refracted - angle) / Math.tan(refracted + angle)) ** 2;
  return absorbed * (1 - (across + along) / 2);
}
