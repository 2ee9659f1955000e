import { getPosition } from "suncalc";
import { wrapBearingDeg } from "../angle.ts";
import { toGrid } from "../grid.ts";
import { requireRange } from "../require.ts";

/** Where the sun stands; both arrays have one value per step. */
export interface SunTrack {
  /** Clockwise from true north, in [0, 360). */
  readonly azimuthDeg: Float64Array;
  /** Above the level horizon, lifted by the refraction of sea-level air. See `sunTrack` for values below 0. */
  readonly elevationDeg: Float64Array;
}

/**
 * Places the sun in the sky at each instant.
 *
 * Elevation is apparent: refraction in fixed sea-level air is included. Below the horizon the number stops being one
 * that can be observed: 0.484°, the refraction at the horizon, is added at every negative true elevation. So 0 here is a
 * true −0.484°, an almanac's sunset (true −0.833°) reads −0.35°, and civil dusk (true −6°) reads −5.52°. Light is zero
 * at or below 0; only `isDark` and `nightSpans` look lower.
 *
 * Rounded to 2⁻²⁰°, so that every JavaScript engine gets the same bits. Within 0.014° of the NREL Solar Position Algorithm above 1°, within 0.04° at the horizon.
 * @param latitudeDeg −90…90, north positive; at a pole the azimuth has no meaning
 * @param longitudeDeg −180…180, east positive
 * @param timesMs instants, milliseconds since 1970 UTC; the middle of each step
 * @throws RangeError if the place is off the globe or an instant is not a finite number
 * @see J. Meeus, Astronomical Algorithms, 2nd ed., 1998, chapters 12, 16, 25 (as computed by suncalc 2)
 */
export function sunTrack(latitudeDeg: number, longitudeDeg: number, timesMs: Float64Array): SunTrack {
  requireRange({ latitudeDeg }, -90, 90);
  requireRange({ longitudeDeg }, -180, 180);
  const azimuthDeg = new Float64Array(timesMs.length);
  const elevationDeg = new Float64Array(timesMs.length);
  for (let i = 0; i < timesMs.length; i++) {
    const sun = getPosition(new Date(timesMs[i]!), latitudeDeg, longitudeDeg);
    if (!Number.isFinite(sun.altitude)) {
      throw new RangeError(`timesMs[${i}] must be an instant in milliseconds since 1970, got ${timesMs[i]}`);
    }
    azimuthDeg[i] = wrapBearingDeg(toGrid(sun.azimuth));
    elevationDeg[i] = toGrid(sun.altitude);
  }
  return { azimuthDeg, elevationDeg };
}
