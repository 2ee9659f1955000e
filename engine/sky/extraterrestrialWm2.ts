import { dayAngleRad } from "./solarDay.ts";

/** Total solar irradiance at the mean distance: G. Kopp and J. L. Lean, Geophys. Res. Lett. 38 (2011) L01706. */
export const SOLAR_CONSTANT_WM2 = 1361;

/**
 * How much stronger sunlight is than at the mean distance: 1.035 in early January, 0.967 in early July.
 * @param day day of the year, 1…366
 * @see J. W. Spencer, Search 2 (1971) 172
 */
export function distanceFactor(day: number): number {
  const angle = dayAngleRad(day);
  return (
    1.00011 +
    0.034221 * Math.cos(angle) +
    0.00128 * Math.sin(angle) +
    0.000719 * Math.cos(2 * angle) +
    0.000077 * Math.sin(2 * angle)
  );
}

/**
 * Sunlight above the air on a surface that faces the sun, W/m².
 * @param day day of the year, 1…366
 */
export function extraterrestrialWm2(day: number): number {
  return SOLAR_CONSTANT_WM2 * distanceFactor(day);
}
