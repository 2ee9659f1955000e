import { Temporal } from "temporal-polyfill";
import type { Ruler, RulerDay } from "./ruler.ts";

const HOUR_MS = 3_600_000;

/**
 * Lays whole local days end to end over universal time. A day on which the clocks change is 23 or 25 hours long and its
 * column is as wide as that; nothing else moves.
 * @param dates local dates in order, "2026-10-08"
 * @param zone an IANA zone name
 */
export function rulerOf(dates: readonly string[], zone: string): Ruler {
  const midnight = (date: Temporal.PlainDate) => date.toZonedDateTime(zone).startOfDay().epochMilliseconds;
  const days = dates.map((text): RulerDay => {
    const date = Temporal.PlainDate.from(text);
    const startMs = midnight(date);
    const endMs = midnight(date.add({ days: 1 }));
    const marks = [6, 12, 18].map((hour) => ({
      hour,
      ms: date.toZonedDateTime({ timeZone: zone, plainTime: Temporal.PlainTime.from({ hour }) }).epochMilliseconds,
    }));
    const hoursMs: number[] = [];
    for (let ms = startMs + HOUR_MS; ms < endMs; ms += HOUR_MS) hoursMs.push(ms);
    return { date: text, startMs, endMs, marks, hoursMs };
  });
  const startMs = days[0]!.startMs;
  const endMs = days.at(-1)!.endMs;
  return { zone, startMs, endMs, days, offsets: offsets(zone, startMs, endMs) };
}

function offsets(zone: string, startMs: number, endMs: number): Ruler["offsets"] {
  let moment = Temporal.Instant.fromEpochMilliseconds(startMs).toZonedDateTimeISO(zone);
  const found = [{ fromMs: startMs, offsetMs: moment.offsetNanoseconds / 1e6 }];
  for (;;) {
    const change = moment.getTimeZoneTransition("next");
    if (change === null || change.epochMilliseconds >= endMs) return found;
    found.push({ fromMs: change.epochMilliseconds, offsetMs: change.offsetNanoseconds / 1e6 });
    moment = change;
  }
}
