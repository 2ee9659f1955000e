import { AWAY, DARK, NIGHT, OPEN, PART } from "./sunKind.ts";
import type { GroupSun, Sunlight } from "./sunlight.ts";

/** A day of one group in hours. */
export interface SunHours {
  /** The sun is up. */
  readonly upH: number;
  readonly openH: number;
  /** In part, through leaves or past an edge; and the hours of full sun that this is worth. */
  readonly partH: number;
  readonly partWorthH: number;
  readonly darkH: number;
  /** Behind the panel's back, or the panel packed away. */
  readonly awayH: number;
}

/** A local day of the event; `isWhole` unless the event starts or ends on it. */
export interface SunDay extends SunHours {
  readonly date: string;
  readonly isWhole: boolean;
}

/** The hours of each local day, one row per day of the ruler. */
export function sunDays(light: Sunlight, group: GroupSun): SunDay[] {
  const stepH = light.stepMs / 3_600_000;
  return light.ruler.days.map((day, d) => {
    const hours = [0, 0, 0, 0, 0];
    let worthH = 0;
    let steps = 0;
    for (let i = 0; i < light.steps; i++) {
      if (light.localDay[i] !== d) continue;
      steps++;
      const kind = group.kind[i]!;
      hours[kind]! += stepH;
      if (kind === PART) worthH += group.share[i]! * stepH;
    }
    return {
      date: day.date,
      isWhole: steps * light.stepMs >= day.endMs - day.startMs,
      upH: steps * stepH - hours[NIGHT]!,
      openH: hours[OPEN]!,
      partH: hours[PART]!,
      partWorthH: worthH,
      darkH: hours[DARK]!,
      awayH: hours[AWAY]!,
    };
  });
}

/**
 * The mean of the whole days: a day cut short by coming or leaving says nothing about the site. An event without a whole
 * day is summed up instead.
 */
export function usualDay(days: readonly SunDay[]): SunHours & { readonly isMean: boolean } {
  const whole = days.filter((day) => day.isWhole);
  const isMean = whole.length > 0;
  const used = isMean ? whole : days;
  const sum = (of: (day: SunHours) => number) =>
    used.reduce((total, day) => total + of(day), 0) / (isMean ? used.length : 1);
  return {
    isMean,
    upH: sum((day) => day.upH),
    openH: sum((day) => day.openH),
    partH: sum((day) => day.partH),
    partWorthH: sum((day) => day.partWorthH),
    darkH: sum((day) => day.darkH),
    awayH: sum((day) => day.awayH),
  };
}
