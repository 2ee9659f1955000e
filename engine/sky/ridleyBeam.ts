import { toGrid } from "../grid.ts";
import { fillTable, readTable, TABLE_NODES } from "./johnsonSb.ts";

/**
 * How much of an hour's light is beam, by Ridley, Boland and Lauret: one number made of how clear the hour is, its
 * neighbours, its day, and the sun's height, and a logistic curve. With the hours' neighbours and the day in it, it tells
 * a hazy hour from a cloudy one where the hour's own clearness does not, above all under a low sun.
 * The paper's term for the hour of the day (0.006 an hour) is held at noon: it moves the diffuse share by 0.01 at most.
 * @see B. Ridley, J. Boland, P. Lauret, Modelling of diffuse solar fraction with multiple predictors, Renewable Energy 35 (2010) 478–483, eq. 10
 */
export const RIDLEY = {
  base: -5.38,
  perHourKt: 6.63,
  perSolarHour: 0.006,
  perElevationDeg: -0.007,
  perDayKt: 1.75,
  /** Per mean clearness of the hour before and the hour after; of the one there is, next to sunrise and sunset. */
  perNeighbourKt: 1.31,
} as const;

/** The curve is kept as a table over ±8. Straight lines between its nodes miss by under 0.0004. */
const TABLE_PER_UNIT = 0.6;
const BEAM_SHARE = new Float64Array(TABLE_NODES);
fillTable(BEAM_SHARE, 0, (z) => 1 / (1 + Math.exp(-z / TABLE_PER_UNIT)));

const NOON_H = 12;

/** What of the sum depends on the sun's height alone. */
export function ridleyBase(elevationDeg: number): number {
  return toGrid(RIDLEY.base + RIDLEY.perSolarHour * NOON_H + RIDLEY.perElevationDeg * elevationDeg);
}

/**
 * Beam's share of the light on the level.
 * @param sum of the terms in `RIDLEY`
 * @returns 0…1
 * @memberLoop
 */
export function ridleyBeamShare(sum: number): number {
  return readTable(BEAM_SHARE, 0, sum * TABLE_PER_UNIT);
}
