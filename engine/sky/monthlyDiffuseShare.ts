import { RAD_PER_DEG } from "../angle.ts";

/** Sunset at which the correlation changes over: winter on one side, the rest of the year on the other. */
const WINTER_SUNSET_DEG = 81.4;
/** Clearest month that it was fitted to; beyond, its value there. */
const CLEAREST_KT = 0.8;

/**
 * Share of a month's light on the level that comes from the sky, by its mean clearness: less than that of a single hazy
 * day of the same clearness, because a real month mixes bright days with dull ones. Fitted from 0.3 to 0.8; duller months go
 * on along the curve, up to 1.
 * @param monthKt mean daily clearness, 0…1
 * @param sunsetAngleRad hour angle of sunset
 * @see D. G. Erbs, S. A. Klein, J. A. Duffie, Solar Energy 28 (1982) 293–302; as Duffie & Beckman, 4th ed. 2013, eq. 2.12.1
 */
export function monthlyDiffuseShare(monthKt: number, sunsetAngleRad: number): number {
  const kt = Math.max(0, Math.min(CLEAREST_KT, monthKt));
  const share =
    sunsetAngleRad / RAD_PER_DEG <= WINTER_SUNSET_DEG
      ? 1.391 + kt * (-3.56 + kt * (4.189 - kt * 2.137))
      : 1.311 + kt * (-3.022 + kt * (3.427 - kt * 1.821));
  return Math.min(1, share);
}
