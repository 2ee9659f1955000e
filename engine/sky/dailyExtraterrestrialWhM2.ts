import { RAD_PER_DEG } from "../angle.ts";
import { requireRange } from "../require.ts";
import { extraterrestrialWm2 } from "./extraterrestrialWm2.ts";
import { dayAngleRad, dayOfYear } from "./solarDay.ts";

/**
 * H0: what a level square metre above the air receives in one day, Wh/m². 0 in polar night.
 *
 * The closed form, with Spencer's declination by day number, because the clearness index of the climate tables is GHI
 * over exactly this H0: in `Kt × H0` its error (up to 5 % in spring and autumn at high latitudes, from a declination up to
 * 0.5° off) cancels, and with a sharper H0 it would not. For the sun's true place use `sunTrack`.
 * @param latitudeDeg −90…90
 * @param dayMs any instant of the day, its date read as UTC: add 240,000 ms a degree of east longitude to a real instant
 * @see J. W. Spencer, Search 2 (1971) 172; M. Iqbal, An Introduction to Solar Radiation, 1983, eq. 4.2.20
 */
export function dailyExtraterrestrialWhM2(latitudeDeg: number, dayMs: number): number {
  requireRange({ latitudeDeg }, -90, 90);
  const day = dayOfYear(dayMs, 0);
  const lat = latitudeDeg * RAD_PER_DEG;
  const dec = spencerDeclinationRad(day);
  const sunset = sunsetAngleRad(latitudeDeg, dayMs);
  const shape = Math.cos(lat) * Math.cos(dec) * Math.sin(sunset) + sunset * Math.sin(lat) * Math.sin(dec);
  return Math.max(0, (24 / Math.PI) * extraterrestrialWm2(day) * shape);
}

/**
 * Hour angle of sunset on a level horizon without refraction, 0 in polar night and π in polar day. Arguments as above.
 * @see M. Iqbal, An Introduction to Solar Radiation, 1983, eq. 1.5.4
 */
export function sunsetAngleRad(latitudeDeg: number, dayMs: number): number {
  const dec = spencerDeclinationRad(dayOfYear(dayMs, 0));
  return Math.acos(Math.max(-1, Math.min(1, -Math.tan(latitudeDeg * RAD_PER_DEG) * Math.tan(dec))));
}

/** Height of the sun at noon, degrees; below 0 in polar night. Arguments as above. */
export function noonHeightDeg(latitudeDeg: number, dayMs: number): number {
  return 90 - Math.abs(latitudeDeg - spencerDeclinationRad(dayOfYear(dayMs, 0)) / RAD_PER_DEG);
}

function spencerDeclinationRad(day: number): number {
  const angle = dayAngleRad(day);
  return (
    0.006918 -
    0.399912 * Math.cos(angle) +
    0.070257 * Math.sin(angle) -
    0.006758 * Math.cos(2 * angle) +
    0.000907 * Math.sin(2 * angle) -
    0.002697 * Math.cos(3 * angle) +
    0.00148 * Math.sin(3 * angle)
  );
}
