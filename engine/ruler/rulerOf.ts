import { clockMoments, clockMsOf, zoneOffsets } from "../zoneTime.ts";
import type { Ruler, RulerDay } from "./ruler.ts";

const HOUR_MS = 3_600_000;

/**
 * Lays whole local days end to end over universal time. A day on which the clocks change is 23 or 25 hours long and its
 * column is as wide as that; nothing else moves.
 * @param dates local dates in order, "2026-10-08"
 * @param zone an IANA zone name
 */
export function rulerOf(dates: readonly string[], zone: string): Ruler {
  const days = dates.map((date): RulerDay => {
    const midnightMs = clockMsOf(date)!;
    const startMs = dayStartMs(zone, midnightMs);
    const endMs = dayStartMs(zone, midnightMs + 24 * HOUR_MS);
    const marks = [6, 12, 18].map((hour) => {
      const { firstMs, lastMs, isSkipped } = clockMoments(zone, midnightMs + hour * HOUR_MS);
      return { hour, ms: isSkipped ? lastMs : firstMs };
    });
    const hoursMs: number[] = [];
    for (let ms = startMs + HOUR_MS; ms < endMs; ms += HOUR_MS) hoursMs.push(ms);
    return { date, startMs, endMs, marks, hoursMs };
  });
  const startMs = days[0]!.startMs;
  const endMs = days.at(-1)!.endMs;
  return { zone, startMs, endMs, days, offsets: zoneOffsets(zone, startMs, endMs) };
}

/** The first instant of a local day: where clocks are put forward over midnight, that of the change. */
function dayStartMs(zone: string, midnightMs: number): number {
  const { firstMs, lastMs, isSkipped } = clockMoments(zone, midnightMs);
  return isSkipped ? zoneOffsets(zone, firstMs, lastMs + 1)[1]!.fromMs : firstMs;
}
