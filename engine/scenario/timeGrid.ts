import { clockMoments, clockMsOf, isZone, zoneOffsets } from "../zoneTime.ts";
import type { Problem } from "./problem.ts";

const DAY_MS = 86_400_000;

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
  /** What the local clock shows at the start, minute of the day in [0, 1440). */
  readonly startMinute: number;
  /**
   * Minute of its local day at the middle of each step: 0…1440, and up to half a step more where the step reaches past midnight; below 0 in
   * the hour that clocks put back over midnight show again.
   */
  readonly localMinute: Float64Array;
  /** The local day in which each step begins: 0 at the start, then the same or one more, so that every day owns steps. */
  readonly localDay: Int32Array;
  /** Weekday of that local day: 0 Monday … 6 Sunday. */
  readonly localWeekday: Int32Array;
  /** The local dates, "2026-10-08", by local day: as many as own steps. A date that a zone skipped is not among them. */
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
  const days = (end - start) / DAY_MS;
  if (days > LONGEST_EVENT_DAYS) {
    const message = `time.end is "${times.end}", ${Math.ceil(days)} days after the start; at most ${LONGEST_EVENT_DAYS} days are worked out, because beyond that the answer is the climate and not the charge brought along: shorten the event or split it.`;
    return { ok: false, problems: [{ code: "event-too-long", path, message }] };
  }
  const stepMs = times.stepMinutes * 60_000;
  const steps = Math.ceil((end - start) / stepMs - 1e-9);
  return { ok: true, grid: layGrid(zone, start, stepMs, steps) };
}

/**
 * A step belongs to the day in which it begins, so that the day of the start, which the plan names, always owns one: by their middles the
 * first step could fall on the next day, and the first day had no step. A day that has begun stays begun where clocks are put back over
 * midnight, as in Newfoundland until 2011.
 */
function layGrid(zone: string, startMs: number, stepMs: number, steps: number): TimeGrid {
  const offsets = zoneOffsets(zone, startMs, startMs + steps * stepMs);
  const middleMs = new Float64Array(steps);
  const localMinute = new Float64Array(steps);
  const localDay = new Int32Array(steps);
  const localWeekday = new Int32Array(steps);
  const startLocalMs = startMs + offsets[0]!.offsetMs;
  /** Days since 1970 of the local days that own steps. */
  const days = [Math.floor(startLocalMs / DAY_MS)];
  let current = 0;
  const localAt = (ms: number) => {
    while (current + 1 < offsets.length && offsets[current + 1]!.fromMs <= ms) current++;
    return ms + offsets[current]!.offsetMs;
  };
  for (let i = 0; i < steps; i++) {
    const beginsOn = Math.floor(localAt(startMs + i * stepMs) / DAY_MS);
    if (beginsOn > days.at(-1)!) days.push(beginsOn);
    const day = days.at(-1)!;
    const middle = startMs + (i + 0.5) * stepMs;
    const localMs = localAt(middle);
    const middleDay = Math.floor(localMs / DAY_MS);
    middleMs[i] = middle;
    localMinute[i] = (localMs - middleDay * DAY_MS) / 60_000 + 1440 * Math.sign(middleDay - day);
    localDay[i] = days.length - 1;
    localWeekday[i] = (((day + 3) % 7) + 7) % 7; // 1 January 1970 was a Thursday
  }
  return {
    zone,
    startMs,
    stepMs,
    stepH: stepMs / 3_600_000,
    steps,
    middleMs,
    startMinute: (startLocalMs - days[0]! * DAY_MS) / 60_000,
    localMinute,
    localDay,
    localWeekday,
    dates: days.map((day) => new Date(day * DAY_MS).toISOString().slice(0, 10)),
  };
}
