import { nextNormal } from "../chance/stream.ts";
import { toGrid } from "../grid.ts";
import { requireRange } from "../require.ts";
import { normalCorrelation, type PreparedClearness } from "./dailyClearness.ts";
import { TABLE_NODES, tableInverse } from "./johnsonSb.ts";
import { SKY_WORDS, type SkyWord } from "./skyWords.ts";

/** What somebody knows of a day: a word for its sky or a clearness, and how sure it is. */
export type KnownDay = ({ readonly word: SkyWord["word"] } | { readonly kt: number }) & {
  /** 0 nothing known … 1 certain; `surenessOfLead` of the day's number from the start if left out. */
  readonly sureness?: number;
};

/** Of a forecast made the day before. */
const DAY_AHEAD = 0.8;
const LOST_PER_DAY = 0.08;

/**
 * How sure a forecast of a day's sky is by its lead time, the correlation between the clearness forecast and the one that comes: 0.88 for
 * today, 0.80 for tomorrow, 0.08 less for each day on, nothing from the eleventh.
 *
 * Tomorrow's is from print: the best models have half the error of "tomorrow as today", which for days that correlate by 0.3 is 0.59 of their
 * spread, and √(1 − 0.59²) = 0.81. That was measured by the hour; a whole day is forecast no worse, a word for it no better. The loss per
 * day is common practice, no source: some skill after a week, none after ten days.
 * @param leadDays days from the forecast to the day, 0 or more
 * @see R. Perez et al., Comparison of numerical weather prediction solar irradiance forecasts in the US, Canada and Europe, Solar Energy 94 (2013) 305–326
 */
export function surenessOfLead(leadDays: number): number {
  requireRange({ leadDays }, 0, 1000);
  return toGrid(Math.max(0, DAY_AHEAD - LOST_PER_DAY * (leadDays - 1)));
}

/** What is known, ready for `bringToKnown`. */
export interface PreparedKnown {
  readonly count: number;
  readonly dayOfKnown: Int32Array;
  /** The value each forecast would read if it were exact, and the standard deviation of its error. */
  readonly reading: Float64Array;
  readonly errorSd: Float64Array;
  /** How much each day moves for each unit that a forecast differs: `count` weights a day. */
  readonly weight: Float64Array;
  readonly surprise: Float64Array;
}

/** Clearest day that may be stated. */
const MOST_KT = 1.5;
/** A forecast less sure than this says nothing. */
const LEAST_SURENESS = 0.02;
/** Normal values stay inside the tables. */
const FARTHEST = 4.7;

/**
 * Prepares the days that are known. A forecast of sureness q moves the day's normal value to q times the stated one and
 * narrows its spread to √(1 − q²); its neighbours move by their correlation with it, and nobody's draws are overwritten.
 * @param known one entry per day of the event, null or left out where nothing is known
 * @param clearIndexPerKt clear-sky index of each day for a Kt of 1, for words
 * @throws RangeError if a value leaves its range or a day lies outside the event
 */
export function prepareKnownDays(
  clearness: PreparedClearness,
  known: readonly (KnownDay | null | undefined)[],
  clearIndexPerKt: Float64Array,
): PreparedKnown | null {
  if (known.length > clearness.days) {
    throw new RangeError(`knownDays may have one entry for each of the ${clearness.days} days, got ${known.length}`);
  }
  const days: number[] = [];
  const reading: number[] = [];
  const variance: number[] = [];
  known.forEach((said, day) => {
    if (!said) return;
    const sureness = said.sureness ?? surenessOfLead(day);
    requireRange({ [`knownDays[${day}].sureness`]: sureness }, 0, 1);
    if ("kt" in said) requireRange({ [`knownDays[${day}].kt`]: said.kt }, 0, MOST_KT);
    const kt = "kt" in said ? said.kt : ktOfWord(said.word, perKtAt(clearIndexPerKt, day));
    if (sureness < LEAST_SURENESS || kt === null) return;
    days.push(day);
    reading.push(tableInverse(clearness.ktOfNormal, day * TABLE_NODES, kt) / sureness);
    variance.push(1 / (sureness * sureness) - 1);
  });
  if (days.length === 0) return null;
  const among = days.map((day, k) =>
    days.map((other, j) => normalCorrelation(clearness, day, other) + (k === j ? variance[k]! : 0)),
  );
  const inverse = inverseOf(among);
  const weight = new Float64Array(clearness.days * days.length);
  for (let day = 0; day < clearness.days; day++) {
    days.forEach((_, k) => {
      let sum = 0;
      days.forEach((other, j) => {
        sum += normalCorrelation(clearness, day, other) * inverse[j]![k]!;
      });
      weight[day * days.length + k] = toGrid(sum);
    });
  }
  return {
    count: days.length,
    dayOfKnown: Int32Array.from(days),
    reading: Float64Array.from(reading, toGrid),
    errorSd: Float64Array.from(variance, (value) => toGrid(Math.sqrt(value))),
    weight,
    surprise: new Float64Array(days.length),
  };
}

/**
 * Clearness that a word stands for, or null where the event has no light that it could say anything about. At the edge of polar night H0 falls
 * short of what a cloudless sky gives (its declination is off by up to half a degree), and a clear day would be clearer than any: it is held.
 */
function ktOfWord(word: SkyWord["word"], clearIndexPerKt: number): number | null {
  const known = SKY_WORDS.find((entry) => entry.word === word);
  if (known === undefined) throw new RangeError(`knownDays: "${word}" is no word for a sky`);
  return clearIndexPerKt > 0 ? Math.min(MOST_KT, known.clearIndexShare / clearIndexPerKt) : null;
}

/** A day's clear-sky index for a Kt of 1; of a day without sun that of the nearest with any, else "clear" would read as the darkest there is. */
function perKtAt(clearIndexPerKt: Float64Array, day: number): number {
  for (let away = 0; away < clearIndexPerKt.length; away++) {
    const found = Math.max(clearIndexPerKt[day - away] ?? 0, clearIndexPerKt[day + away] ?? 0);
    if (found > 0) return found;
  }
  return 0;
}

/** Gauss and Jordan, for a positive definite matrix of a few rows. */
function inverseOf(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let column = 0; column < size; column++) {
    const pivot = rows[column]!;
    const by = pivot[column]!;
    rows[column] = pivot.map((value) => value / by);
    for (let other = 0; other < size; other++) {
      if (other === column) continue;
      const times = rows[other]![column]!;
      rows[other] = rows[other]!.map((value, k) => value - times * rows[column]![k]!);
    }
  }
  return rows.map((row) => row.slice(size));
}

/**
 * Moves a member's free draw towards what is known: each forecast is compared with the draw and an error of its own, and
 * the difference is shared out (Matheron's rule of conditional simulation).
 * @param state the member's stream of purpose `sureness`
 * @param normals one per day, changed in place
 * @see J.-P. Chilès and P. Delfiner, Geostatistics, 2nd ed., 2012, section 7.3
 * @memberLoop
 */
export function bringToKnown(known: PreparedKnown, state: Uint32Array, normals: Float64Array): void {
  for (let k = 0; k < known.count; k++) {
    const seen = normals[known.dayOfKnown[k]!]! + known.errorSd[k]! * nextNormal(state);
    known.surprise[k] = known.reading[k]! - seen;
  }
  for (let day = 0; day < normals.length; day++) {
    let moved = normals[day]!;
    for (let k = 0; k < known.count; k++) moved += known.weight[day * known.count + k]! * known.surprise[k]!;
    normals[day] = Math.max(-FARTHEST, Math.min(FARTHEST, moved));
  }
}
