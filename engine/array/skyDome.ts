import { RAD_PER_DEG } from "../angle.ts";
import { toGrid } from "../grid.ts";
import { requireSameLength } from "../require.ts";
import type { Models } from "../scenario/models.ts";
import { airMass } from "../sky/clearSky.ts";

/**
 * How a sky's light lies on the dome, as far as the weather has no say in it: one for all panels of a scenario. What it makes of a
 * member's light is `stepDome`'s work.
 */
export interface PreparedDome {
  readonly transposition: Models["transposition"];
  /** `DOME_SLOTS` numbers per step, in the places named below; rounded by `toGrid`. */
  readonly rows: Float64Array;
}

/** Beam that a plane facing the sun gets of light from beside the sun, for each W/m² that falls on the level: 1 ÷ sine of the sun's height, held. */
export const PER_LEVEL = 0;
/** 1000 ÷ the light above the air, m²/kW: turns beam into Hay and Davies's anisotropy. */
export const PER_EXTRATERRESTRIAL = 1;
/** For Perez alone, else 0: the sun's angle from the zenith, radians; his κ z³; 1000 × air mass ÷ the light above the air, m²/kW. */
export const ZENITH_RAD = 2;
export const KAPPA_Z3 = 3;
export const AIR_PER_EXTRATERRESTRIAL = 4;
export const DOME_SLOTS = 5;

/** Sun heights under which beam ratios stop growing: 89° from the zenith for Hay and Davies, 85° for Perez. */
const HAY_DAVIES_LOWEST_COS = 0.01745;
const PEREZ_LOWEST_COS = Math.cos(85 * RAD_PER_DEG);
/** Perez's weight of the zenith angle (radians, cubed) in the sky's clearness. */
const PEREZ_KAPPA = 1.041;

/**
 * @param elevationDeg of the sun, one value per step; where it is down all stays 0
 * @param extraterrestrialWm2 light above the air on a surface that faces the sun, one value per step
 * @throws RangeError if they differ in length
 * @see J. Hay & J. Davies, Proc. First Canadian Solar Radiation Data Workshop, 1980, 59–72; R. Perez et al., Solar Energy 44 (1990) 271–289
 */
export function prepareDome(
  transposition: Models["transposition"],
  elevationDeg: Float64Array,
  extraterrestrialWm2: Float64Array,
): PreparedDome {
  requireSameLength({ elevationDeg, extraterrestrialWm2 });
  const isPerez = transposition === "perez";
  const lowest = isPerez ? PEREZ_LOWEST_COS : HAY_DAVIES_LOWEST_COS;
  const rows = new Float64Array(elevationDeg.length * DOME_SLOTS);
  for (let i = 0; i < elevationDeg.length; i++) {
    const at = i * DOME_SLOTS;
    const sunDeg = elevationDeg[i]!;
    if (!(sunDeg > 0)) continue;
    const aboveWm2 = extraterrestrialWm2[i]!;
    rows[at + PER_LEVEL] = toGrid(1 / Math.max(Math.sin(sunDeg * RAD_PER_DEG), lowest));
    rows[at + PER_EXTRATERRESTRIAL] = toGrid(1000 / aboveWm2);
    if (!isPerez) continue;
    const zenithRad = (90 - sunDeg) * RAD_PER_DEG;
    rows[at + ZENITH_RAD] = toGrid(zenithRad);
    rows[at + KAPPA_Z3] = toGrid(PEREZ_KAPPA * zenithRad ** 3);
    rows[at + AIR_PER_EXTRATERRESTRIAL] = toGrid((1000 * airMass(sunDeg)) / aboveWm2);
  }
  return { transposition, rows };
}
