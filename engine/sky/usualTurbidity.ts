import { toGrid } from "../grid.ts";
import { requireRange } from "../require.ts";
import { dayOfYear } from "./solarDay.ts";

/**
 * Water above sea level, cm, at the latitudes of the AFGL standard atmospheres: tropical, mid-latitude, subarctic; summer and winter.
 * @see G. P. Anderson et al., AFGL Atmospheric Constituent Profiles, AFGL-TR-86-0110, 1986 (column totals from memory)
 */
const WATER_CM: readonly { readonly latitudeDeg: number; readonly summer: number; readonly winter: number }[] = [
  { latitudeDeg: 15, summer: 4.11, winter: 4.11 },
  { latitudeDeg: 45, summer: 2.92, winter: 0.85 },
  { latitudeDeg: 60, summer: 2.08, winter: 0.42 },
];
/** Heights over which water and haze fall to 1/e, m (common practice, no source). */
const WATER_HEIGHT_M = 2100;
const HAZE_HEIGHT_M = 1500;
/** Depth of the haze at 700 nm by the water: a fit to the monthly turbidities in print for open country and for mountains. */
const HAZE = { dry: 0.03, perWaterCm: 0.02 } as const;
/** Thicknesses of air that a Linke turbidity is stated for. */
const AIR_MASS = 2;
/** Warmest and moistest: a month after the longest day. */
const WARMEST_DAY = 203;

/**
 * The Linke turbidity of clear days by latitude, season and height, for who has typed none: that of clean dry air, water and
 * haze together (Molineaux), read as Kasten's turbidity at two air masses. Open country in mid-latitudes: 2.5 in January, 3.5 in July; the
 * tropics 3.9; the far north 2.3 in winter; mountains 1.6 to 2.3. Towns and deserts in dust have 1 to 2 more.
 * @param latitudeDeg −90…90
 * @param elevationM −450…9000
 * @param timeMs any instant of the day
 * @see B. Molineaux, P. Ineichen, N. O'Neill, Applied Optics 37 (1998) 7008–7018; F. Kasten, Meteorol. Rundschau 33 (1980) 124–127
 */
export function usualTurbidity(latitudeDeg: number, elevationM: number, timeMs: number): number {
  requireRange({ latitudeDeg }, -90, 90);
  requireRange({ elevationM }, -450, 9000);
  const height = Math.max(0, elevationM);
  const seaWaterCm = waterCm(latitudeDeg, dayOfYear(timeMs, 0));
  const water = seaWaterCm * Math.exp(-height / WATER_HEIGHT_M);
  const haze = (HAZE.dry + HAZE.perWaterCm * seaWaterCm) * Math.exp(-height / HAZE_HEIGHT_M);
  const depth = -0.101 + 0.235 * AIR_MASS ** -0.16 + 0.112 * AIR_MASS ** -0.55 * water ** 0.34 + haze;
  return toGrid((9.4 + 0.9 * AIR_MASS) * depth);
}

function waterCm(latitudeDeg: number, day: number): number {
  const away = Math.abs(latitudeDeg);
  const last = WATER_CM.at(-1)!;
  const upper = WATER_CM.find((row) => row.latitudeDeg >= away) ?? last;
  const lower = WATER_CM[Math.max(0, WATER_CM.indexOf(upper) - 1)]!;
  const span = upper.latitudeDeg - lower.latitudeDeg;
  const share = span > 0 ? Math.min(1, (away - lower.latitudeDeg) / span) : 0;
  const summer = lower.summer + share * (upper.summer - lower.summer);
  const winter = lower.winter + share * (upper.winter - lower.winter);
  const southern = latitudeDeg < 0 ? 182.5 : 0;
  const warm = 0.5 + 0.5 * Math.cos((2 * Math.PI * (day - WARMEST_DAY - southern)) / 365);
  return summer ** warm * winter ** (1 - warm); // vapour grows with warmth as a power does
}
