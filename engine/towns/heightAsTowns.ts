import { distanceKm } from "../place/distanceKm.ts";
import type { Town } from "./townTable.ts";

/** Farther than this a town says nothing about a place's height, km. */
const FAR_KM = 40;
const MOST_TOWNS = 4;
/** Nearer than this no town counts for more, km: positions are kept to 0.01°. */
const NEAR_KM = 1;

/** A height above the sea that is as good as the towns near by. */
export interface TownHeight {
  /** To 10 m. */
  readonly heightM: number;
  /** How far the towns' own heights lie apart. */
  readonly lowM: number;
  readonly highM: number;
  /** The nearest of them, and how far it is. */
  readonly nearest: Town;
  readonly nearestKm: number;
}

/**
 * The height above the sea of a place, as that of up to four towns within 40 km, each by the square of its nearness (Shepard 1968). It knows nothing of
 * the ground between them: towns lie in valleys, so a hill is higher.
 * @returns null where no town with a known height is near
 * @see D. Shepard, A two-dimensional interpolation function for irregularly-spaced data, Proc. 23rd ACM National Conference (1968) 517
 */
export function heightAsTowns(towns: readonly Town[], lat: number, lon: number): TownHeight | null {
  const near = nearestTowns(towns, lat, lon, (town) => town.heightM !== null);
  const nearest = near[0];
  if (nearest === undefined) return null;
  let [sum, weights] = [0, 0];
  for (const { town, km } of near) {
    const weight = 1 / Math.max(NEAR_KM, km) ** 2;
    sum += town.heightM! * weight;
    weights += weight;
  }
  const heights = near.map(({ town }) => town.heightM!);
  return {
    heightM: Math.round(sum / weights / 10) * 10,
    lowM: Math.min(...heights),
    highM: Math.max(...heights),
    nearest: nearest.town,
    nearestKm: nearest.km,
  };
}

function nearestTowns(towns: readonly Town[], lat: number, lon: number, counts: (town: Town) => boolean) {
  const highDeg = FAR_KM / 111;
  return towns
    .filter((town) => Math.abs(town.lat - lat) < highDeg && counts(town))
    .map((town) => ({ town, km: distanceKm(town, { lat, lon }) }))
    .filter(({ km }) => km < FAR_KM)
    .sort((a, b) => a.km - b.km)
    .slice(0, MOST_TOWNS);
}
