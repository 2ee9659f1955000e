import { clockMoments, clockMsOf, isZone, zoneOffsets } from "../zoneTime.ts";
import type { Problem } from "./problem.ts";

/** The longest event that is simulated; longer ones are a climate question and not one of bringing enough battery. */
export const LONGEST_EVENT_DAYS = 60;

/** Equal steps of universal time with the local clock beside them; every array has one value per step. */
export interface TimeGrid {
  readonly zone: string;
  readonly startMs: number;
  readonly stepMs: number;
  readonly stepH: number;
  readonly steps: number;
  /** The middle of each step, where the sun is looked up. */
  readonly middleMs: Float64Array;
  /** Minute of the local day, 0…1440, at the middle of each step. */
  readonly localMinute: Float64Array;
  /** Local days since the day of the start: 0, 1, 2… */
  readonly localDay: Int32Array;
  /** Weekday of that local day: 0 Monday … 6 Sunday. */
  readonly localWeekday: Int32Array;
  /** The local dates, "2026-10-08", by local day. */
  readonly dates: readonly string[];
}

/** When the event takes place: local times as a person writes them. */
export interface EventTimes {
  readonly start: string;
  readonly end: string;
  readonly stepMinutes: number;
}

/** The instant of a local time, the first of two where it comes twice; or what is wrong with it. */
function momentMs(field: "start" | "end", local: string, zone: string): number | Problem {
  const path = ["time", field];
  const clockMs = clockMsOf(local);
  if (clockMs === null) {
    const message = `time.${field} is "${local}", which is no date of the calendar; write it as "2026-10-08T10:00".`;
    return { code: "no-such-date", path, message };
  }
  const { firstMs, isSkipped } = clockMoments(zone, clockMs);
  if (!isSkipped) return firstMs;
  const message = `time.${field} is "${local}", an hour that the clocks skip in ${zone}; write a time before or after the change of clocks.`;
  return { code: "skipped-hour", path, message };
}

/**
 * Lays equal steps of universal time from the start to the end and notes the local clock at each, so that a change of
 * clocks inside the event gives a day of 23 or 25 hours and nothing else. A start or end that happens twice (clocks put
 * back) means the first time.
 * @param zone an IANA zone name
 * @returns the grid, or what is wrong with the times; the last step ends at or after the end
 */
export function timeGrid(
  times: EventTimes,
  zone: string,
): { ok: true; grid: TimeGrid } | { ok: false; problems: Problem[] } {
  if (!isZone(zone)) {
    const message = `The zone is "${zone}", which the clocks of this machine do not know; write another name of the IANA list in place.zone.`;
    return { ok: false, problems: [{ code: "no-such-zone", path: ["place", "zone"], message }] };
  }
  const start = momentMs("start", times.start, zone);
  const end = momentMs("end", times.end, zone);
  if (typeof start !== "number" || typeof end !== "number") {
    return { ok: false, problems: [start, end].filter((moment): moment is Problem => typeof moment !== "number") };
  }
  const path = ["time", "end"];
  if (end <= start) {
    const message = `time.end is "${times.end}", which is not after the start "${times.start}"; swap them or put the end later.`;
    return { ok: false, problems: [{ code: "end-before-start", path, message }] };
  }
  const days = (end - start) / 86_400_000;
  if (days > LONGEST_EVENT_DAYS) {
    const message = `time.end is "${times.end}", ${Math.ceil(days)} days after the start; at most ${LONGEST_EVENT_DAYS} days are worked out, because beyond that the answer is the climate and not the charge brought along: shorten the event or split it.`;
    return { ok: false, problems: [{ code: "event-too-long", path, message }] };
  }
  const stepMs = times.stepMinutes * 60_000;
  const steps = Math.ceil((end - start) / stepMs - 1e-9);
  return { ok: true, grid: layGrid(zone, start, stepMs, steps) };
}

function layGrid(zone: string, startMs: number, stepMs: number, steps: number): TimeGrid {
  const offsets = zoneOffsets(zone, startMs, startMs + steps * stepMs);
  const middleMs = new Float64Array(steps);
  const localMinute = new Float64Array(steps);
  const localDay = new Int32Array(steps);
  const localWeekday = new Int32Array(steps);
  const firstDay = Math.floor((startMs + offsets[0]!.offsetMs) / 86_400_000);
  let current = 0;
  for (let i = 0; i < steps; i++) {
    const middle = startMs + (i + 0.5) * stepMs;
    while (current + 1 < offsets.length && offsets[current + 1]!.fromMs <= middle) current++;
    const localMs = middle + offsets[current]!.offsetMs;
    const day = Math.floor(localMs / 86_400_000);
    middleMs[i] = middle;
    localMinute[i] = (localMs - day * 86_400_000) / 60_000;
    localDay[i] = day - firstDay;
    localWeekday[i] = (((day + 3) % 7) + 7) % 7; // 1 January 1970 was a Thursday
  }
  const lastDay = steps === 0 ? 0 : localDay[steps - 1]!;
  const dates = Array.from({ length: lastDay + 1 }, (_, d) =>
    new Date((firstDay + d) * 86_400_000).toISOString().slice(0, 10),
  );
  return {
    zone,
    startMs,
    stepMs,
    stepH: stepMs / 3_600_000,
    steps,
    middleMs,
    localMinute,
    localDay,
    localWeekday,
    dates,
  };
}
