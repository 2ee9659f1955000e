import type { Ruler } from "./ruler.ts";
import { clockAt, dayName, offsetName } from "./rulerClock.ts";
import type { TimePicture } from "./timePicture.ts";

/** The ruler as a sentence. */
export function rulerWords({ ruler, quiet }: Pick<TimePicture, "ruler" | "quiet">): string {
  const silent = quietWords({ ruler, quiet });
  return `Time, ${ruler.days.map((day) => dayName(day.date)).join(", ")}; local time, ${zoneWords(ruler)}${silent === null ? "" : `; ${silent}`}.`;
}

/** "generator quiet 19:00–10:00": the first whole stretch, or what there is of one; null where it may always run. */
export function quietWords({ ruler, quiet }: Pick<TimePicture, "ruler" | "quiet">): string | null {
  const longest = [...quiet].sort((a, b) => b.endMs - b.startMs - (a.endMs - a.startMs))[0];
  if (longest === undefined) return null;
  const clock = (ms: number) => clockAt(ruler, ms).clock.slice(0, 5);
  return `generator quiet ${clock(longest.startMs)}–${clock(longest.endMs)}`;
}

/** "local time, UTC+2"; where the clocks change, "UTC+2, from Sun 25 UTC+1". */
export function zoneWords(ruler: Ruler): string {
  const [first, ...later] = ruler.offsets;
  const before = offsetName(first!.offsetMs);
  if (later.length === 0) return `local time, ${before}`;
  return [
    before,
    ...later.map(({ fromMs, offsetMs }) => `from ${clockAt(ruler, fromMs).day} ${offsetName(offsetMs)}`),
  ].join(", ");
}

/** "dark 18:24–07:07": the first whole night, or on a single day what there is of one. */
export function nightWords({ ruler, nights }: Pick<TimePicture, "ruler" | "nights">): string {
  const clock = (ms: number) => clockAt(ruler, ms).clock.slice(0, 5);
  const whole = nights.find((night) => night.startMs > ruler.startMs && night.endMs < ruler.endMs);
  if (whole !== undefined) return `dark ${clock(whole.startMs)}–${clock(whole.endMs)}`;
  if (nights.length === 0) return "never dark";
  const until = nights.find((night) => night.endMs < ruler.endMs);
  const from = nights.find((night) => night.startMs > ruler.startMs);
  const words = [
    ...(until === undefined ? [] : [`until ${clock(until.endMs)}`]),
    ...(from === undefined ? [] : [`from ${clock(from.startMs)}`]),
  ];
  return words.length === 0 ? "dark throughout" : `dark ${words.join(", ")}`;
}
