import { requireSameLength } from "../require.ts";
import { monthlyCourse } from "./monthlyCourse.ts";

/** Brightest of a month's days over their mean, in standard deviations, at least: less room than that, and the spread is lost. */
export const LEAST_REACH_SD = 1.1;
/** Darkest mean and least spread that days are drawn with. */
const LEAST_MEAN = 0.04;
const LEAST_SD = 0.01;
/** Days between nothing and the brightest cannot differ by more than this share of it. */
const MOST_SD_SHARE = 0.3;
/** A mean that is lowered by less than this is not worth a word. */
const UNSAID = 0.005;

/** What days are like on average; one value per day. */
export interface UsualClearness {
  /** Mean Kt, from which brighter and duller days are drawn. */
  readonly meanKt: Float64Array;
  /** Standard deviation of Kt within a month. */
  readonly sdKt: Float64Array;
  /** How many days' mean had to be lowered, to be said on the screen. */
  readonly heldDays: number;
}

/**
 * Monthly means run through the course of the year, the same for a single run and for an ensemble. Where the sun is low, tables
 * and people state a clearness that no sky can give (twilight counts in it, and months with next to no light borrow
 * another's): the mean is held so far under the brightest day that days still differ by the month's spread.
 * @param climate kt and sd, January first
 * @param dates local dates, "2026-10-08"
 * @param brightestKt from `dayLight`; left out, nothing is held
 */
export function usualClearness(
  climate: { readonly kt: readonly number[]; readonly sd: readonly number[] },
  dates: readonly string[],
  brightestKt?: Float64Array,
): UsualClearness {
  const meanKt = monthlyCourse(climate.kt, dates).map((kt) => Math.max(LEAST_MEAN, kt));
  const sdKt = monthlyCourse(climate.sd, dates).map((sd) => Math.max(LEAST_SD, sd));
  if (brightestKt === undefined) return { meanKt, sdKt, heldDays: 0 };
  requireSameLength({ meanKt, brightestKt });
  let heldDays = 0;
  for (let day = 0; day < dates.length; day++) {
    const brightest = brightestKt[day]!;
    if (brightest <= 0) continue; // polar night
    sdKt[day] = Math.min(sdKt[day]!, MOST_SD_SHARE * brightest);
    const most = brightest - LEAST_REACH_SD * sdKt[day]!;
    if (meanKt[day]! > most + UNSAID) heldDays++;
    meanKt[day] = Math.min(meanKt[day]!, most);
  }
  return { meanKt, sdKt, heldDays };
}
