import { RAD_PER_DEG } from "../angle.ts";

/** Mean radius of the Earth, km (IUGG). */
const EARTH_RADIUS_KM = 6371.0088;

/** A place on the globe, degrees; north and east positive. */
export interface LatLon {
  readonly lat: number;
  readonly lon: number;
}

/**
 * The shortest way over the globe, km; the Earth taken as a sphere, which errs by 0.5 % at most.
 * @see R. W. Sinnott, Virtues of the haversine, Sky and Telescope 68 (1984) 159
 */
export function distanceKm(from: LatLon, to: LatLon): number {
  const halfLat = ((to.lat - from.lat) * RAD_PER_DEG) / 2;
  const halfLon = ((to.lon - from.lon) * RAD_PER_DEG) / 2;
  const across = Math.cos(from.lat * RAD_PER_DEG) * Math.cos(to.lat * RAD_PER_DEG);
  const haversine = Math.sin(halfLat) ** 2 + across * Math.sin(halfLon) ** 2;
  return 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(haversine)));
}
