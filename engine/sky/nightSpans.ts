import { getPosition, getTimes } from "suncalc";
import { requireRange } from "../require.ts";

/** From one sunset to the next sunrise, milliseconds since 1970 UTC. */
export interface NightSpan {
  startMs: number;
  endMs: number;
}

/**
 * An almanac's sunset, true elevation −50′ of the sun's centre, as `sunTrack` reads it: suncalc adds its refraction at the
 * horizon, 0.0002967 / tan(0.00312536 / 0.08901179) rad, to every negative elevation.
 */
const SUNSET_DEG = -50 / 60 + (0.0002967 / Math.tan(0.00312536 / 0.08901179)) * (180 / Math.PI);
const DAY_MS = 86_400_000;

/**
 * The nights within a stretch of time, each cut to it, in order. Sunset and sunrise are the almanac's: upper limb on a
 * level horizon, 34′ of refraction, seen from sea level. Polar day gives none; polar night gives the whole stretch.
 * Good to 6 s against the NREL Solar Position Algorithm (real refraction varies by more than that).
 * @throws RangeError if the place is off the globe or the stretch ends before it starts
 */
export function nightSpans(latitudeDeg: number, longitudeDeg: number, startMs: number, endMs: number): NightSpan[] {
  requireRange({ latitudeDeg }, -90, 90);
  requireRange({ longitudeDeg }, -180, 180);
  requireRange({ startMs, endMs }, -8.64e15, 8.64e15);
  requireRange({ endMs }, startMs, 8.64e15);
  const below = (timeMs: number) => getPosition(new Date(timeMs), latitudeDeg, longitudeDeg).altitude < SUNSET_DEG;

  // Between its highest and its lowest point the sun crosses any height at most once, so those points are enough to look at.
  const looks = [startMs];
  for (let dayMs = startMs - DAY_MS; dayMs <= endMs + DAY_MS; dayMs += DAY_MS) {
    const { nadir, solarNoon } = getTimes(new Date(dayMs), latitudeDeg, longitudeDeg);
    for (const look of [nadir.getTime(), solarNoon.getTime()]) if (look > startMs && look < endMs) looks.push(look);
  }
  looks.push(endMs);

  const spans: NightSpan[] = [];
  let nightFromMs = below(startMs) ? startMs : Number.NaN;
  for (let i = 1; i < looks.length; i++) {
    const isNight = below(looks[i]!);
    if (isNight === !Number.isNaN(nightFromMs)) continue;
    const edgeMs = crossing(looks[i - 1]!, looks[i]!, isNight, below);
    if (!isNight) spans.push({ startMs: nightFromMs, endMs: edgeMs });
    nightFromMs = isNight ? edgeMs : Number.NaN;
  }
  if (!Number.isNaN(nightFromMs) && endMs > nightFromMs) spans.push({ startMs: nightFromMs, endMs });
  return spans;
}

/** The instant, to a tenth of a second, at which `below` becomes `after`. */
function crossing(lowMs: number, highMs: number, after: boolean, below: (timeMs: number) => boolean): number {
  let low = lowMs;
  let high = highMs;
  while (high - low > 100) {
    const middle = (low + high) / 2;
    if (below(middle) === after) high = middle;
    else low = middle;
  }
  return Math.round((low + high) / 2);
}
