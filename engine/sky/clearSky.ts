import { RAD_PER_DEG } from "../angle.ts";
import { toGrid } from "../grid.ts";
import { requireRange, requireSameLength } from "../require.ts";
import { cleanSkyShare } from "./cleanSky.ts";
import { extraterrestrialWm2 } from "./extraterrestrialWm2.ts";
import { dayOfYear } from "./solarDay.ts";
import type { SunTrack } from "./sunTrack.ts";

/** The light of a cloudless sky; every array has one value per step, W/m² unless named otherwise. */
export interface ClearSky {
  /** On the level: `dhiWm2 + dniWm2 × sinElevation`. 0 while the sun is at or below the horizon. */
  readonly ghiWm2: Float64Array;
  /** Beam, on a surface that faces the sun. 0 while the sun is at or below the horizon. */
  readonly dniWm2: Float64Array;
  /** Sky, on the level. 0 while the sun is at or below the horizon. */
  readonly dhiWm2: Float64Array;
  /** Above the air, on a surface that faces the sun; the same by night, so that a share of it never divides by 0. */
  readonly extraterrestrialWm2: Float64Array;
  /** Sine of the apparent elevation, 0…1; 0 while the sun is at or below the horizon. */
  readonly sinElevation: Float64Array;
}

/**
 * How much air the beam crosses, in thicknesses of the atmosphere seen from sea level straight up.
 * @param elevationDeg apparent, above 0
 * @see F. Kasten and A. T. Young, Applied Optics 28 (1989) 4735–4738
 */
export function airMass(elevationDeg: number): number {
  return 1 / (Math.sin(elevationDeg * RAD_PER_DEG) + 0.50572 * (elevationDeg + 6.07995) ** -1.6364);
}

/** Air pressure at a height as a share of that at sea level, International Standard Atmosphere (ISO 2533:1975). */
export function pressureShare(elevationM: number): number {
  return (1 - 2.25577e-5 * elevationM) ** 5.25588;
}

/** Above this the published form goes on growing until it passes the light above the air; the clean sky's growth is taken from here on. */
const HIGHEST_FITTED_M = 3000;

/**
 * The light that comes through a cloudless sky, by Ineichen and Perez, without the enhancement factor of the longer
 * published form (it explodes at low sun). Rounded to 2⁻²⁰ W/m² for equal bits everywhere. Real clear skies differ by 5 to
 * 10 %, most of it turbidity. Above 3,000 m the light on the level grows from there as that of `cleanSkyShare` does.
 * @param sun one place per step, from `sunTrack` at the middle of each step
 * @param timesMs the same instants; they give the distance of the sun
 * @param longitudeDeg −180…180
 * @param elevationM height of the site, −450…9000 m
 * @param linkeTurbidity 1…10: 2 clean winter or mountain air, 3 fair, 4 to 5 humid summer, 6 haze and dust
 * @throws RangeError if a value leaves its range or the arrays differ in length
 * @see P. Ineichen and R. Perez, Solar Energy 73 (2002) 151–157; R. Perez et al., Solar Energy 73 (2002) 307–317
 */
export function clearSky(
  sun: SunTrack,
  timesMs: Float64Array,
  longitudeDeg: number,
  elevationM: number,
  linkeTurbidity: number,
): ClearSky {
  requireSameLength({ timesMs, elevationDeg: sun.elevationDeg });
  requireRange({ longitudeDeg }, -180, 180);
  requireRange({ elevationM }, -450, 9000);
  requireRange({ linkeTurbidity }, 1, 10);
  const steps = timesMs.length;
  const clear = {
    ghiWm2: new Float64Array(steps),
    dniWm2: new Float64Array(steps),
    dhiWm2: new Float64Array(steps),
    extraterrestrialWm2: new Float64Array(steps),
    sinElevation: new Float64Array(steps),
  };
  const fittedM = Math.min(elevationM, HIGHEST_FITTED_M);
  // Names after the paper: fh1 and fh2 thin the air and its haze with height, cg1, cg2 and b carry the fit.
  const fh1 = Math.exp(-fittedM / 8000);
  const fh2 = Math.exp(-fittedM / 1250);
  const cg1 = 5.09e-5 * fittedM + 0.868;
  const cg2 = 3.92e-5 * fittedM + 0.0387;
  const b = 0.664 + 0.163 / fh1;
  const beamLimit = 1 - (0.1 - 0.2 * Math.exp(-linkeTurbidity)) / (0.1 + 0.882 / fh1);
  const pressure = pressureShare(fittedM);
  const thinPressure = pressureShare(elevationM);
  for (let i = 0; i < steps; i++) {
    const aboveWm2 = toGrid(extraterrestrialWm2(dayOfYear(timesMs[i]!, longitudeDeg)));
    clear.extraterrestrialWm2[i] = aboveWm2;
    const elevationDeg = sun.elevationDeg[i]!;
    const sinElevation = toGrid(Math.sin(elevationDeg * RAD_PER_DEG));
    if (!(sinElevation > 0)) continue;
    const air = airMass(elevationDeg) * pressure;
    // GHI over sin(elevation), so that nothing is divided by the sine of a sun that touches the horizon.
    const grown =
      elevationM > fittedM ? cleanSkyShare(sinElevation, thinPressure) / cleanSkyShare(sinElevation, pressure) : 1;
    const towardsSunWm2 = grown * cg1 * aboveWm2 * Math.exp(-cg2 * air * (fh1 + fh2 * (linkeTurbidity - 1)));
    const dniWm2 = toGrid(
      Math.min(
        grown * b * aboveWm2 * Math.exp(-0.09 * air * (linkeTurbidity - 1)),
        towardsSunWm2 * Math.max(0, beamLimit),
      ),
    );
    const dhiWm2 = toGrid(Math.max(0, (towardsSunWm2 - dniWm2) * sinElevation));
    clear.sinElevation[i] = sinElevation;
    clear.dniWm2[i] = dniWm2;
    clear.dhiWm2[i] = dhiWm2;
    clear.ghiWm2[i] = dhiWm2 + dniWm2 * sinElevation;
  }
  return clear;
}
