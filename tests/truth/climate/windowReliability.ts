import type { MonthlyClearness } from "../../../engine/sky/dailyClearness.ts";
import type { ClearnessYear } from "./clearnessStatistics.ts";
import { type DrawnPlace, drawnYears, YEAR_MONTHS, yearLight } from "./drawnYears.ts";

/** Shares of members that a reliability diagram looks at. */
export const STATED = [0.1, 0.25, 0.5, 0.75, 0.9] as const;
/** Days of a window, as of a long weekend. */
export const WINDOW_DAYS = 4;
export const SEASONS = ["December to February", "March to May", "June to August", "September to November"] as const;
const YEAR = 365;

/** Of one season: how many real windows there were, and how many were duller than each stated share of the members. */
export interface SeasonCount {
  windows: number;
  readonly under: number[];
}

/**
 * Holds every run of four days of a record against the light on the level that drawn years have on the same days of the
 * calendar: were the stated shares true, a tenth of the real runs would lie under the members' lowest tenth, half under their middle.
 * @returns one count per season, by the month of the first day
 */
export function windowReliability(
  climate: MonthlyClearness,
  place: DrawnPlace,
  years: readonly ClearnessYear[],
  members: number,
  ktErrorRms: number,
): SeasonCount[] {
  const light = yearLight(place);
  const drawn = drawnYears(climate, members, "reliability", { brightestKt: light.brightestKt, ktErrorRms });
  const h0 = light.extraterrestrialWhM2;
  const limits = Array.from({ length: YEAR }, (_, first) => {
    const sums = Float64Array.from(drawn, ({ kt }) => windowLight(h0, first, (day) => kt[day]!)).sort();
    return STATED.map((share) => sums[Math.min(members - 1, Math.floor(share * members))]!);
  });
  const counts = SEASONS.map(() => ({ windows: 0, under: STATED.map(() => 0) }));
  for (const { kt, month } of years) {
    let dayOfYear = 0;
    for (let i = 0; i + WINDOW_DAYS <= kt.length; i++) {
      const isLeapDay = i > 0 && month[i] === 1 && dayOfYear >= 59;
      const first = Math.min(YEAR - 1, dayOfYear);
      if (!isLeapDay) dayOfYear++;
      if (month[i] !== YEAR_MONTHS[first]) continue;
      const got = windowLight(h0, first, (_, past) => kt[i + past]!);
      if (Number.isNaN(got)) continue;
      const count = counts[Math.floor(((month[i]! + 1) % 12) / 3)]!;
      count.windows++;
      limits[first]!.forEach((limit, k) => {
        if (got < limit) count.under[k]!++;
      });
    }
  }
  return counts;
}

function windowLight(h0: Float64Array, first: number, ktOf: (day: number, past: number) => number): number {
  let sum = 0;
  for (let past = 0; past < WINDOW_DAYS; past++) {
    const day = (first + past) % YEAR;
    sum += h0[day]! * ktOf(day, past);
  }
  return sum;
}

/** Counts of several records together. */
export function together(counts: readonly (readonly SeasonCount[])[]): SeasonCount[] {
  return SEASONS.map((_, season) => ({
    windows: counts.reduce((sum, one) => sum + one[season]!.windows, 0),
    under: STATED.map((_, k) => counts.reduce((sum, one) => sum + one[season]!.under[k]!, 0)),
  }));
}
