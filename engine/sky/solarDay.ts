/** Milliseconds by which local mean solar time runs ahead of UTC for each degree of east longitude. */
export const SOLAR_MS_PER_DEG = 240_000;
const DAY_MS = 86_400_000;

/**
 * The day of the year, 1…366, on the calendar of local mean solar time (UTC shifted by 4 minutes a degree of longitude),
 * so that one sunlit day is one day everywhere, whatever zone the clock is set to.
 */
export function dayOfYear(timeMs: number, longitudeDeg: number): number {
  const localMs = timeMs + longitudeDeg * SOLAR_MS_PER_DEG;
  const newYearMs = Date.UTC(new Date(localMs).getUTCFullYear(), 0, 1);
  return Math.floor((localMs - newYearMs) / DAY_MS) + 1;
}

/** The start of the local mean solar day that an instant lies in, as a UTC instant. */
export function solarMidnightMs(timeMs: number, longitudeDeg: number): number {
  const shiftMs = longitudeDeg * SOLAR_MS_PER_DEG;
  return Math.floor((timeMs + shiftMs) / DAY_MS) * DAY_MS - shiftMs;
}

/**
 * The angle of the year in Spencer's series, radians, 0 on 1 January.
 * @see J. W. Spencer, Fourier series representation of the position of the sun, Search 2 (1971) 172
 */
export function dayAngleRad(day: number): number {
  return (2 * Math.PI * (day - 1)) / 365;
}

/**
 * True local solar time, hours in [0, 24): 12 is when the sun is due south (or north). Within about a minute.
 * @see J. W. Spencer 1971, equation of time
 */
export function solarHour(timeMs: number, longitudeDeg: number): number {
  const angle = dayAngleRad(dayOfYear(timeMs, longitudeDeg));
  const equationMin =
    229.18 *
    (0.000075 +
      0.001868 * Math.cos(angle) -
      0.032077 * Math.sin(angle) -
      0.014615 * Math.cos(2 * angle) -
      0.040849 * Math.sin(2 * angle));
  const meanMs = timeMs + longitudeDeg * SOLAR_MS_PER_DEG + equationMin * 60_000;
  return (((meanMs % DAY_MS) + DAY_MS) % DAY_MS) / 3_600_000;
}
