import type { Tree } from "./obstacle.ts";
import type { Scenario } from "./scenario.ts";

/** Middle of the weeks in which leaves come and fall at 45°, as day of the year, and how much later and earlier for each degree away from there. */
const OUT_DAY = 120;
const FALL_DAY = 300;
const DAYS_PER_DEG = 2;
/** Half of the time that coming and falling take, days. */
const HALF_TURN_DAYS = 15;
/** Nearer to the equator than the first, no season takes the leaves; from the second on it takes them all. */
const EVERGREEN_DEG = 25;
const DECIDUOUS_DEG = 32;
const YEAR_DAYS = 365.25;

/**
 * How much of their leaf trees that shed it have at a place on a day of the year: out in spring, later by two days for each degree towards the
 * pole, off in autumn, earlier by as many; half a year later south of the equator. Coasts, heights and kinds differ by two to three weeks.
 * @param dayOfYear 1…366
 * @returns 0 (bare) … 1 (in full leaf)
 * @see green-up two days later for each degree: X. Zhang et al., Global Change Biology 10 (2004) 1133–1145 (from memory); dates at 45° common practice
 */
export function seasonLeafShare(latitudeDeg: number, dayOfYear: number): number {
  const away = Math.abs(latitudeDeg);
  const day = (dayOfYear + (latitudeDeg < 0 ? YEAR_DAYS / 2 : 0)) % YEAR_DAYS;
  const shiftDays = DAYS_PER_DEG * (away - 45);
  const ramp = (middleDay: number) =>
    Math.max(0, Math.min(1, (day - middleDay + HALF_TURN_DAYS) / (2 * HALF_TURN_DAYS)));
  const leaf = Math.max(0, ramp(OUT_DAY + shiftDays) - ramp(FALL_DAY - shiftDays));
  const sheds = Math.max(0, Math.min(1, (away - EVERGREEN_DEG) / (DECIDUOUS_DEG - EVERGREEN_DEG)));
  return 1 - sheds * (1 - leaf);
}

/** The season's share of leaf in the middle of a scenario's event. */
export function eventLeafShare({ place, time }: Pick<Scenario, "place" | "time">): number {
  const middleMs = (Date.parse(`${time.start}Z`) + Date.parse(`${time.end}Z`)) / 2;
  const yearMs = Date.UTC(new Date(middleMs).getUTCFullYear(), 0, 1);
  return seasonLeafShare(place.latitudeDeg, 1 + (middleMs - yearMs) / 86_400_000);
}

/** A tree's share of leaf: as stated, all of it for an evergreen, else the season's. */
export function leafShareOf(tree: Tree, seasonShare: number): number {
  return tree.leafShare ?? (tree.foliage === "evergreen" ? 1 : seasonShare);
}
