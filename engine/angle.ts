/** Radians in one degree. */
export const RAD_PER_DEG = Math.PI / 180;

/** Brings any bearing into [0, 360). */
export function wrapBearingDeg(bearingDeg: number): number {
  const turned = bearingDeg % 360;
  return turned < 0 ? turned + 360 : turned;
}

/** Brings any longitude into [-180, 180), so that 190° E and 170° W are one meridian. */
export function wrapLongitudeDeg(longitudeDeg: number): number {
  return wrapBearingDeg(longitudeDeg + 180) - 180;
}
