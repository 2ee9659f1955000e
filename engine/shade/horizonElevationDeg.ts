import { wrapBearingDeg } from "../angle.ts";
import type { Horizon } from "../scenario/obstacle.ts";

/** A skyline sorted by bearing, its last point repeated before north and its first after it. */
export interface PreparedHorizon {
  readonly bearingDeg: Float64Array;
  readonly elevationDeg: Float64Array;
}

/**
 * Sorts a skyline by bearing and closes it over north.
 * @throws RangeError if it has no point
 */
export function prepareHorizon(horizon: Horizon): PreparedHorizon {
  if (horizon.points.length === 0) throw new RangeError(`horizon ${horizon.id} must have at least one point, got none`);
  const sorted = horizon.points
    .map((point) => ({ bearingDeg: wrapBearingDeg(point.bearingDeg), elevationDeg: point.elevationDeg }))
    .sort((a, b) => a.bearingDeg - b.bearingDeg);
  const first = sorted[0]!;
  const last = sorted.at(-1)!;
  const closed = [
    { ...last, bearingDeg: last.bearingDeg - 360 },
    ...sorted,
    { ...first, bearingDeg: first.bearingDeg + 360 },
  ];
  return {
    bearingDeg: Float64Array.from(closed, (point) => point.bearingDeg),
    elevationDeg: Float64Array.from(closed, (point) => point.elevationDeg),
  };
}

/** Height of the skyline in one direction: linear between its points. @param bearingDeg any bearing */
export function horizonElevationDeg(horizon: PreparedHorizon, bearingDeg: number): number {
  const at = wrapBearingDeg(bearingDeg);
  const bearings = horizon.bearingDeg;
  let low = 0;
  let high = bearings.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (bearings[middle]! <= at) low = middle;
    else high = middle;
  }
  const span = bearings[high]! - bearings[low]!;
  const along = span > 0 ? (at - bearings[low]!) / span : 0;
  return horizon.elevationDeg[low]! + along * (horizon.elevationDeg[high]! - horizon.elevationDeg[low]!);
}
