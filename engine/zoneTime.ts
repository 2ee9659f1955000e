/** The clocks of time zones, read from the table that every JavaScript engine carries. */

const DAY_MS = 86_400_000;
const FIXED = /^([+-])([01]\d|2[0-3])(?::?([0-5]\d))?$/;
const LOCAL = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2}))?)?$/;
/** Between two looks for a change of clocks: no zone has ever changed and changed back within one. */
const LOOK_MS = DAY_MS / 2;

const zones = new Map<string, (atMs: number) => number>();

/**
 * How far a zone's clock is ahead of UTC at an instant, ms.
 * @param zone an IANA name, or an offset such as "+01:00"
 * @throws RangeError if the zone is not known here
 */
export function zoneOffsetMs(zone: string, atMs: number): number {
  let offsetAt = zones.get(zone);
  if (offsetAt === undefined) {
    offsetAt = zoneReader(zone);
    zones.set(zone, offsetAt);
  }
  return offsetAt(atMs);
}

/** Whether a zone is known here: its name, or an offset. */
export function isZone(zone: string): boolean {
  try {
    return Number.isFinite(zoneOffsetMs(zone, 0));
  } catch {
    return false;
  }
}

function zoneReader(zone: string): (atMs: number) => number {
  const fixed = FIXED.exec(zone);
  if (fixed !== null) {
    const offsetMs = (Number(fixed[2]) * 60 + Number(fixed[3] ?? 0)) * 60_000 * (fixed[1] === "-" ? -1 : 1);
    return () => offsetMs;
  }
  const clock = new Intl.DateTimeFormat("en-US", {
    timeZone: zone,
    hourCycle: "h23",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    second: "numeric",
  });
  return (atMs) => {
    const secondMs = Math.floor(atMs / 1000) * 1000;
    const [day, hour, minute, second] = clock.format(secondMs).match(/\d+/g)!.map(Number) as [
      number,
      number,
      number,
      number,
    ];
    const utc = new Date(secondMs);
    const ahead = day - utc.getUTCDate();
    const days = Math.abs(ahead) > 1 ? -Math.sign(ahead) : ahead; // over the end of a month
    const hours = days * 24 + hour - utc.getUTCHours();
    return ((hours * 60 + minute - utc.getUTCMinutes()) * 60 + second - utc.getUTCSeconds()) * 1000;
  };
}

/** One offset of a zone from universal time, in force from `fromMs` on. */
export interface ZoneOffset {
  readonly fromMs: number;
  readonly offsetMs: number;
}

/** A zone's offsets from `startMs` to `endMs`: one, and one more for each change of clocks on the way. */
export function zoneOffsets(zone: string, startMs: number, endMs: number): ZoneOffset[] {
  const offsets = [{ fromMs: startMs, offsetMs: zoneOffsetMs(zone, startMs) }];
  for (let fromMs = startMs; fromMs < endMs; fromMs += LOOK_MS) {
    const { offsetMs } = offsets.at(-1)!;
    let [before, after] = [fromMs, Math.min(endMs, fromMs + LOOK_MS)];
    if (zoneOffsetMs(zone, after) === offsetMs) continue;
    while (after - before > 1) {
      const middle = Math.floor((before + after) / 2);
      if (zoneOffsetMs(zone, middle) === offsetMs) before = middle;
      else after = middle;
    }
    if (after < endMs) offsets.push({ fromMs: after, offsetMs: zoneOffsetMs(zone, after) });
  }
  return offsets;
}

/** When a zone's clock shows a time. */
export interface ClockMoments {
  /** The instant, or the first of two where clocks were put back; of a time that is skipped, as if they had been put forward before. */
  readonly firstMs: number;
  /** The instant, or the second of two; of a time that is skipped, as if the clocks were put forward after it. */
  readonly lastMs: number;
  /** Whether the clocks were put forward over it. */
  readonly isSkipped: boolean;
}

/** @param clockMs what the clock shows, as if it were UTC */
export function clockMoments(zone: string, clockMs: number): ClockMoments {
  const moments = [zoneOffsetMs(zone, clockMs - DAY_MS), zoneOffsetMs(zone, clockMs + DAY_MS)]
    .map((offsetMs) => clockMs - offsetMs)
    .sort((a, b) => a - b);
  const shown = moments.filter((ms) => ms + zoneOffsetMs(zone, ms) === clockMs);
  const [first, last] = shown.length > 0 ? [shown[0]!, shown.at(-1)!] : [moments[0]!, moments[1]!];
  return { firstMs: first, lastMs: last, isSkipped: shown.length === 0 };
}

/** A local time such as "2026-10-08T10:00" as if the clock were UTC, ms; a date alone is its midnight. Null where the calendar has none such. */
export function clockMsOf(text: string): number | null {
  const part = LOCAL.exec(text);
  if (part === null) return null;
  const [year, month, day, hour, minute, second] = part.slice(1).map((digits) => Number(digits ?? 0)) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  if (hour > 23 || minute > 59 || second > 59) return null;
  const moment = new Date(0);
  moment.setUTCFullYear(year, month - 1, day); // Date.UTC takes the years 0 to 99 for 1900 to 1999
  if (moment.getUTCMonth() !== month - 1 || moment.getUTCDate() !== day) return null;
  return moment.setUTCHours(hour, minute, second);
}
