import { nextNormal } from "../chance/stream.ts";
import { toGrid } from "../grid.ts";
import { requireRange } from "../require.ts";
import type { PreparedClearness } from "./dailyClearness.ts";
import { NORMAL_SUM, readTable, TABLE_NODES } from "./johnsonSb.ts";

/** Normal values stay inside the tables. */
const FARTHEST = 4.7;
/** A climate whose days hardly differ cannot be moved by its days' normal values: at most this many of their deviations. */
const FARTHEST_MOVE = 1.5;

/**
 * Prepares the error of the climate itself: the tables' mean clearness is off by a typical `ktErrorRms`, the same way for all
 * days of an event. For each day, how far its normal value moves for one standard deviation of that error, so that mean
 * Kt moves by it: the mean slope of the day's table is the expectation of z Kt(z) under the normal law.
 * @param ktErrorRms standard deviation of the mean's error, Kt, 0…0.2; 0 where the mean is taken as it is
 * @returns one value per day, or null without an error
 * @see C. M. Stein, Annals of Statistics 9 (1981) 1135–1151, lemma 1
 */
export function prepareClimateError(clearness: PreparedClearness, ktErrorRms: number): Float64Array | null {
  requireRange({ ktErrorRms }, 0, 0.2);
  if (ktErrorRms === 0) return null;
  const { z, weight } = NORMAL_SUM;
  return Float64Array.from({ length: clearness.days }, (_, day) => {
    let slope = 0;
    for (let k = 0; k < z.length; k++) {
      slope += weight[k]! * z[k]! * readTable(clearness.ktOfNormal, day * TABLE_NODES, z[k]!);
    }
    return toGrid(Math.min(FARTHEST_MOVE, ktErrorRms / slope));
  });
}

/**
 * Moves a member's days by the error of its climate; one draw for all of them.
 * @param state the member's stream of purpose `climate`
 * @param normals one per day, changed in place
 * @memberLoop
 */
export function moveByClimateError(moves: Float64Array, state: Uint32Array, normals: Float64Array): void {
  const error = nextNormal(state);
  for (let day = 0; day < normals.length; day++) {
    normals[day] = Math.max(-FARTHEST, Math.min(FARTHEST, normals[day]! + moves[day]! * error));
  }
}
