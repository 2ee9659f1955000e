import { clockMoments, isZone } from "../zoneTime.ts";
import type { TimeForm } from "./meterMapping.ts";

/** A date and a time of day as written: as if the clock were UTC, and the offset written beside it, ms; null where none is. */
export interface ClockReading {
  readonly clockMs: number;
  readonly offsetMs: number | null;
}

// Spaces belong to what follows them: two runs side by side would be tried in every split, in the square of their length.
const DAY = String.raw`(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})`;
const CLOCK = String.raw`(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?(?:\s*([AaPp]\.?[Mm]\.?))?`;
const OFFSET = String.raw`(?:\s*(Z|z|UTC|[+-]\d{2}(?::?\d{2})?))?`;
const DATED = new RegExp(`^${DAY}(?:[T ,]\\s*${CLOCK}${OFFSET})?$`);
const CLOCK_ONLY = new RegExp(`^${CLOCK}${OFFSET}$`);
const EPOCH = /^\d{9,14}(?:[.,]\d+)?$/;

/** Whether a cell holds a time of day without a date. */
export const isClockOnly = (cell: string) => CLOCK_ONLY.test(cell.trim());
/** Whether a cell holds a date, with or without a time. */
export const isDated = (cell: string) => DATED.test(cell.trim());
export const isEpoch = (cell: string) => EPOCH.test(cell.trim());

/** The three numbers of a date as written; null where there is no date. */
export function dateNumbers(cell: string): readonly [number, number, number] | null {
  const part = DATED.exec(cell.trim());
  return part === null ? null : [Number(part[1]), Number(part[2]), Number(part[3])];
}

/** Reads date and time. @returns null where the text is no such time, or no day of the calendar */
export function readMeterTime(cell: string, form: TimeForm): ClockReading | null {
  const text = cell.trim();
  if (form === "epochS" || form === "epochMs") {
    if (!EPOCH.test(text)) return null;
    return { clockMs: Number(text.replace(",", ".")) * (form === "epochS" ? 1000 : 1), offsetMs: 0 };
  }
  const part = DATED.exec(text);
  if (part === null) return null;
  const numbers = [part[1]!, part[2]!, part[3]!];
  const order = form === "yearFirst" ? [0, 1, 2] : form === "dayFirst" ? [2, 1, 0] : [2, 0, 1];
  const [yearText, monthText, dayText] = order.map((k) => numbers[k]!) as [string, string, string];
  if (yearText.length !== 4 && (yearText.length !== 2 || form === "yearFirst")) return null;
  const year = Number(yearText) + (yearText.length === 2 ? 2000 : 0);
  const [month, day] = [Number(monthText), Number(dayText)];
  const clock = clockOf(part.slice(4, 9));
  if (clock === null || month < 1 || month > 12) return null;
  const dayMs = Date.UTC(year, month - 1, day);
  if (new Date(dayMs).getUTCDate() !== day) return null;
  return { clockMs: dayMs + clock, offsetMs: offsetOf(part[9]) };
}

function clockOf(parts: readonly (string | undefined)[]): number | null {
  const [hourText, minuteText, secondText, fraction, half] = parts;
  if (hourText === undefined) return 0;
  const [minute, second] = [Number(minuteText), Number(secondText ?? 0)];
  let hour = Number(hourText);
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return null;
    hour = (hour % 12) + (/^p/i.test(half) ? 12 : 0);
  }
  if (hour > 24 || minute > 59 || second > 59 || (hour === 24 && minute + second > 0)) return null;
  return ((hour * 60 + minute) * 60 + second + Number(`0.${fraction ?? 0}`)) * 1000;
}

function offsetOf(text: string | undefined): number | null {
  if (text === undefined) return null;
  if (/^[Zz]$|^UTC$/.test(text)) return 0;
  const minutes = Number(text.slice(1, 3)) * 60 + Number(text.slice(3).replace(":", "") || 0);
  return (text.startsWith("-") ? -1 : 1) * minutes * 60_000;
}

/** Turns readings of a zone's clock into instants, remembering each hour's offset: a look-up costs more than a row. */
export interface ZoneClock {
  /** The instant of a clock reading; of the two in an hour that is lived twice, the first that does not lie before `afterMs`. */
  instantMs(clockMs: number, afterMs: number): number;
}

/** @returns null where the zone is not known */
export function zoneClock(zone: string): ZoneClock | null {
  if (!isZone(zone)) return null;
  const offsets = new Map<number, readonly [number, number]>();
  const offsetsOf = (clockMs: number): readonly [number, number] => {
    const slot = Math.floor(clockMs / 1_800_000);
    const known = offsets.get(slot);
    if (known !== undefined) return known;
    const slotMs = slot * 1_800_000;
    const { firstMs, lastMs } = clockMoments(zone, slotMs);
    const found = [slotMs - firstMs, slotMs - lastMs] as const;
    offsets.set(slot, found);
    return found;
  };
  return {
    instantMs(clockMs, afterMs) {
      const [first, second] = offsetsOf(clockMs);
      const firstMs = clockMs - first;
      // In the hour that is skipped the two differ as well, but there the first lies an hour on; both mean the same row.
      return first > second && firstMs < afterMs ? clockMs - second : firstMs;
    },
  };
}
