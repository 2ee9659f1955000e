import { toGrid } from "../grid.ts";
import { requireRange, requireSameLength } from "../require.ts";
import { solarHour } from "./solarDay.ts";

/** True solar hour at which the day is warmest. Common practice, no source: two to three hours after noon. */
export const WARMEST_SOLAR_HOUR = 15;

/**
 * Air temperature at each step, °C: one cosine a day between the day's lowest and highest, warmest at a fixed true solar
 * hour, so that it does not depend on the zone a clock is set to. Common practice; a real night cools more slowly
 * and a real front does what it likes. Where two days differ, the change falls on midnight.
 * @param timesMs middle of each step, UTC
 * @param longitudeDeg −180…180
 * @param dayOfStep which day each step belongs to, an index into the next two
 * @param maxC highest of each day
 * @param minC lowest of each day, not above `maxC`
 * @param warmestSolarHour 0…24
 * @throws RangeError if a value leaves its range, an index has no day, or a day is colder than its own lowest
 */
export function airTemperature(
  timesMs: Float64Array,
  longitudeDeg: number,
  dayOfStep: Int32Array,
  maxC: Float64Array,
  minC: Float64Array,
  warmestSolarHour: number = WARMEST_SOLAR_HOUR,
): Float64Array {
  requireSameLength({ timesMs, dayOfStep });
  requireSameLength({ maxC, minC });
  requireRange({ longitudeDeg }, -180, 180);
  requireRange({ warmestSolarHour }, 0, 24);
  for (let day = 0; day < maxC.length; day++) {
    requireRange({ [`maxC[${day}]`]: maxC[day]! }, minC[day]!, 70);
    requireRange({ [`minC[${day}]`]: minC[day]! }, -90, 70);
  }
  const tempC = new Float64Array(timesMs.length);
  for (let i = 0; i < timesMs.length; i++) {
    const day = dayOfStep[i]!;
    requireRange({ [`dayOfStep[${i}]`]: day }, 0, maxC.length - 1);
    const middleC = (maxC[day]! + minC[day]!) / 2;
    const halfSwingC = (maxC[day]! - minC[day]!) / 2;
    const angle = (2 * Math.PI * (solarHour(timesMs[i]!, longitudeDeg) - warmestSolarHour)) / 24;
    tempC[i] = toGrid(middleC + halfSwingC * Math.cos(angle));
  }
  return tempC;
}
