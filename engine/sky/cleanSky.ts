/**
 * What of the light above the air reaches the level under the cleanest and driest cloudless sky, share of that on a surface that
 * faces the sun: the simplified Solis model without any haze and with the least water it takes (0.2 cm). Made for heights of 0 to
 * 7,000 m and for low sun, where the Ineichen–Perez form is too dim (2° of sun: a third of this) and, high up, too bright.
 * @param sinElevation of the apparent elevation, 0…1
 * @param pressureShare of that at sea level
 * @returns 0…0.9, and less than `sinElevation`
 * @see P. Ineichen, Solar Energy 82 (2008) 758–762, for aod700 = 0 and w = 0.2
 */
export function cleanSkyShare(sinElevation: number, pressureShare: number): number {
  if (!(sinElevation > 0)) return 0;
  const thinner = Math.log(pressureShare);
  const above = ABOVE + 0.071 * thinner;
  const depth = Math.max(0, DEPTH + (0.0079 * WATER_CM + 0.1) * thinner);
  return above * Math.exp(-depth / sinElevation ** SLANT) * sinElevation;
}

const WATER_CM = 0.2;
const LN_WATER = Math.log(WATER_CM);
/** Names after the paper: I0', the depth for all light τg and the exponent g of its slant, at sea level. */
const ABOVE = 1.08 * WATER_CM ** 0.0051;
const DEPTH = 0.27 + 0.043 * LN_WATER + 0.009 * LN_WATER * LN_WATER;
const SLANT = 0.3798 - 0.0147 * LN_WATER;
