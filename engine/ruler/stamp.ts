import type { Ruler } from "./ruler.ts";
import { offsetAt } from "./rulerClock.ts";

/** "2026-10-08T10:00+02:00" */
export function stamp(ruler: Ruler, ms: number): string {
  const offsetMs = offsetAt(ruler, ms);
  const minutes = Math.abs(offsetMs) / 60_000;
  const two = (value: number) => String(value).padStart(2, "0");
  const local = new Date(ms + offsetMs).toISOString().slice(0, 16);
  return `${local}${offsetMs < 0 ? "-" : "+"}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
