import { clockAt, dayName } from "../../ruler/rulerClock.ts";
import { figure } from "../../words/numbers.ts";
import type { RunPicture } from "../run/runPicture.ts";

/** A day in figures, one for each of `dayHeads`. */
export interface DayLine {
  readonly day: string;
  readonly figures: readonly string[];
}

const hasSources = (picture: RunPicture) => picture.days.some((day) => day.sourceWh > 0);

/** What stands over the columns, without the day's own. */
export function dayHeads(picture: RunPicture): string[] {
  return [
    "Sun rises",
    "sets",
    ...picture.incoming.filter((part) => part.shadeLossW !== null).map((part) => `${part.name}, Wh`),
    "Taken by shade, Wh",
    "Spilled, Wh",
    ...(hasSources(picture) ? ["Other sources, Wh"] : []),
    "Loads want, Wh",
    "Unserved, Wh",
    "Charge at dusk, %",
    "at dawn, %",
    "Lowest, %",
  ];
}

export function dayRows(picture: RunPicture): DayLine[] {
  const clock = (ms: number | null) => (ms === null ? "–" : clockAt(picture.ruler, ms).clock.slice(0, 5));
  const share = (value: number | null) => (value === null ? "–" : figure(value * 100));
  return picture.days.map((day) => ({
    day: dayName(day.date),
    figures: [
      clock(day.sunriseMs),
      clock(day.sunsetMs),
      ...day.groupWh.map((wh) => figure(wh)),
      figure(day.shadeLossWh),
      figure(day.spilledWh),
      ...(hasSources(picture) ? [figure(day.sourceWh)] : []),
      figure(day.demandWh),
      figure(day.unservedWh),
      share(day.duskShare),
      share(day.dawnShare),
      share(day.lowestShare),
    ],
  }));
}
