import type { Ruler } from "../../ruler/ruler.ts";
import { dateParts, offsetAt } from "../../ruler/rulerClock.ts";

/** What the clock at the event shows, "2026-10-09T18:30", as a field for date and time takes it. */
export function localTime(ruler: Ruler, ms: number): string {
  return new Date(ms + offsetAt(ruler, ms)).toISOString().slice(0, 16);
}

/** "Fri 9 18:30" of "2026-10-09T18:30" */
export function timeWords(local: string): string {
  const { weekday, dayOfMonth } = dateParts(local.slice(0, 10));
  return `${weekday} ${dayOfMonth} ${local.slice(11)}`;
}

/** "Fri 9 October 18:30": for a moment that may lie in another month than the event. */
export function longTimeWords(local: string): string {
  const { weekday, dayOfMonth, month, year } = dateParts(local.slice(0, 10));
  return `${weekday} ${dayOfMonth} ${month} ${year}, ${local.slice(11)}`;
}

/** The event's own stretch of time, as its clock shows it. */
export interface EventTime {
  readonly ruler: Ruler;
  readonly startMs: number;
  readonly endMs: number;
}

/** What a new reading's time is to begin with: now, or nothing and why. */
export function suggestedTime(event: EventTime, nowMs: number): { readonly at: string; readonly says: string | null } {
  const { ruler, startMs, endMs } = event;
  if (nowMs >= startMs && nowMs <= endMs) return { at: localTime(ruler, nowMs), says: null };
  const side = nowMs < startMs ? "before the event begins" : "after the event has ended";
  const says = `It is ${longTimeWords(localTime(ruler, nowMs))} now, ${side}; say when it was read.`;
  return { at: "", says };
}

/** Why a time cannot stand; null when it can. */
export function whyNoTime(event: EventTime, at: string): string | null {
  if (at === "") return "Say when it was read.";
  const [first, last] = [localTime(event.ruler, event.startMs), localTime(event.ruler, event.endMs)];
  if (at >= first && at <= last) return null;
  return `${longTimeWords(at)} lies ${at < first ? "before" : "after"} the event, which lasts from ${timeWords(first)} to ${timeWords(last)}; correct the time.`;
}
