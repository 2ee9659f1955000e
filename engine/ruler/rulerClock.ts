import type { Ruler } from "./ruler.ts";

const WEEKDAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** An instant as the clock on the wall shows it. */
export interface ClockReading {
  /** "Sun" */
  readonly weekday: string;
  /** "Sun 11" */
  readonly day: string;
  /** "07:40"; with the offset, "02:40 UTC+1", in an hour that happens twice. */
  readonly clock: string;
}

/** "Sun" and 11 of "2026-10-11". */
export function dateParts(date: string) {
  const [year, month, day] = date.split("-").map(Number) as [number, number, number];
  const weekday = WEEKDAYS[new Date(Date.UTC(year, month - 1, day)).getUTCDay()]!;
  return { year, month: MONTHS[month - 1]!, dayOfMonth: day, weekday };
}

/** "Sun 11" of "2026-10-11". */
export function dayName(date: string): string {
  const { weekday, dayOfMonth } = dateParts(date);
  return `${weekday} ${dayOfMonth}`;
}

/** "UTC+2", "UTC−3:30" */
export function offsetName(offsetMs: number): string {
  const minutes = Math.abs(offsetMs) / 60_000;
  const rest = minutes % 60;
  const sign = offsetMs < 0 ? "−" : "+";
  return `UTC${sign}${Math.floor(minutes / 60)}${rest === 0 ? "" : `:${String(rest).padStart(2, "0")}`}`;
}

/** Offset from universal time in force at an instant. */
export function offsetAt(ruler: Ruler, ms: number): number {
  let offsetMs = ruler.offsets[0]!.offsetMs;
  for (const offset of ruler.offsets) if (offset.fromMs <= ms) offsetMs = offset.offsetMs;
  return offsetMs;
}

/** Reads the local clock, to the minute. Where an hour happens twice the offset tells the two apart. */
export function clockAt(ruler: Ruler, ms: number): ClockReading {
  const offsetMs = offsetAt(ruler, ms);
  const text = new Date(Math.round((ms + offsetMs) / 60_000) * 60_000).toISOString();
  const { weekday, dayOfMonth } = dateParts(text.slice(0, 10));
  const twice = happensTwice(ruler, ms) ? ` ${offsetName(offsetMs)}` : "";
  return { weekday, day: `${weekday} ${dayOfMonth}`, clock: `${text.slice(11, 16)}${twice}` };
}

/** Whether the clocks, put back, show this time once more or have shown it before. */
function happensTwice({ offsets }: Ruler, ms: number): boolean {
  return offsets.some(({ fromMs, offsetMs }, i) => {
    const backMs = i === 0 ? 0 : offsets[i - 1]!.offsetMs - offsetMs;
    return backMs > 0 && ms >= fromMs - backMs && ms < fromMs + backMs;
  });
}

/** "Thu 8 to Sun 11 October 2026" */
export function dateSpan(ruler: { readonly days: readonly { readonly date: string }[] }): string {
  const first = dateParts(ruler.days[0]!.date);
  const last = dateParts(ruler.days.at(-1)!.date);
  const name = (part: typeof first) => `${part.weekday} ${part.dayOfMonth}`;
  if (ruler.days.length === 1) return `${name(last)} ${last.month} ${last.year}`;
  const month = first.month === last.month ? "" : ` ${first.month}`;
  const year = first.year === last.year ? "" : ` ${first.year}`;
  return `${name(first)}${month}${year} to ${name(last)} ${last.month} ${last.year}`;
}

/** "Sun 11 07:40" */
export function moment(ruler: Ruler, ms: number): string {
  const { day, clock } = clockAt(ruler, ms);
  return `${day} ${clock}`;
}
