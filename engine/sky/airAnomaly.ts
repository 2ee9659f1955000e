import { nextNormal } from "../chance/stream.ts";
import { toGrid } from "../grid.ts";
import { requireRange } from "../require.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { WARMEST_SOLAR_HOUR } from "./airTemperature.ts";
import { monthlyCourse } from "./monthlyCourse.ts";
import { solarHour } from "./solarDay.ts";

/**
 * How air strays from the month's means, from 89 measured days at two places in spring and summer (docs/fits/air.md):
 * little to go by, and the common practice of simple weather generators otherwise.
 */
export const AIR_FIT = {
  /** Standard deviation of a day's mid temperature about the month's, K (measured 2.7, 2.8, 4.2). */
  spreadK: 3,
  /** Correlation of that from day to day (measured 0.53, 0.57, 0.80). */
  persistence: 0.6,
  /** Relative change of the day's swing for a change of 1 in its clear-sky index (measured 0.65, 0.83, 0.98; pooled 0.85). */
  swingPerIndex: 0.85,
} as const;

const LEAST_SWING = 0.25;

/** Air of an event, ready for `drawAir`. */
export interface PreparedAir {
  readonly days: number;
  /** Per day: mean of highest and lowest, and half the swing between them, of the month, °C and K. */
  readonly middleC: Float64Array;
  readonly halfSwingK: Float64Array;
  /** Per day: the clear-sky index that goes with the month's mean swing. */
  readonly usualIndex: Float64Array;
  readonly spreadK: number;
  /** Stretches of steps of one day that lean towards one other: where each begins (one more value than stretches), and the two days. */
  readonly stretchStart: Int32Array;
  readonly dayOfStretch: Int32Array;
  readonly leansTo: Int32Array;
  /** Per step: how far it leans towards the other day (0…0.5), and where in the swing it stands (−1…1). */
  readonly leanShare: Float64Array;
  readonly swing: Float64Array;
  /** Room for the last member's days. */
  readonly drawnMiddleC: Float64Array;
  readonly drawnHalfSwingK: Float64Array;
}

/**
 * Prepares air temperature: the month's mean highest and lowest, a day's own anomaly, a swing that is wider under a
 * clear sky; from noon to noon one day passes into the next, so that nothing jumps at midnight.
 * @param tmaxC twelve monthly means of the daily highest, °C; @param tminC of the lowest
 * @param usualIndex clear-sky index of a usual day, one per day
 * @param spreadK standard deviation of a day's anomaly; 0 for none
 */
export function prepareAir(
  tmaxC: readonly number[],
  tminC: readonly number[],
  grid: TimeGrid,
  longitudeDeg: number,
  usualIndex: Float64Array,
  spreadK: number = AIR_FIT.spreadK,
  warmestSolarHour: number = WARMEST_SOLAR_HOUR,
): PreparedAir {
  requireRange({ spreadK }, 0, 15);
  requireRange({ warmestSolarHour }, 0, 24);
  const high = monthlyCourse(tmaxC, grid.dates);
  const low = monthlyCourse(tminC, grid.dates);
  const days = grid.dates.length;
  const fromNoon = Float64Array.from(grid.localMinute, (minute) => minute / 1440 - 0.5);
  const leans = Int32Array.from(fromNoon, (away, i) => {
    return Math.max(0, Math.min(days - 1, grid.localDay[i]! + (away < 0 ? -1 : 1)));
  });
  const starts = Array.from(leans.keys()).filter((i) => {
    return i === 0 || grid.localDay[i] !== grid.localDay[i - 1] || leans[i] !== leans[i - 1];
  });
  const air: PreparedAir = {
    days,
    middleC: high.map((value, day) => toGrid((value + low[day]!) / 2)),
    halfSwingK: high.map((value, day) => toGrid(Math.max(0, value - low[day]!) / 2)),
    usualIndex: usualIndex.map(toGrid),
    spreadK,
    stretchStart: Int32Array.of(...starts, grid.steps),
    dayOfStretch: Int32Array.from(starts, (i) => grid.localDay[i]!),
    leansTo: Int32Array.from(starts, (i) => leans[i]!),
    leanShare: fromNoon.map((away) => toGrid(Math.min(0.5, Math.abs(away)))),
    swing: new Float64Array(grid.steps),
    drawnMiddleC: new Float64Array(days),
    drawnHalfSwingK: new Float64Array(days),
  };
  for (let i = 0; i < grid.steps; i++) {
    const hour = solarHour(grid.middleMs[i]!, longitudeDeg);
    air.swing[i] = toGrid(Math.cos((2 * Math.PI * (hour - warmestSolarHour)) / 24));
  }
  return air;
}

const DRIVE = toGrid(Math.sqrt(1 - AIR_FIT.persistence * AIR_FIT.persistence));

/**
 * Draws the air of one member; one draw a day.
 * @param state the member's stream of purpose `air`
 * @param dayIndex clear-sky index of each day
 * @param outTempC one value per step
 * @memberLoop
 */
export function drawAir(air: PreparedAir, state: Uint32Array, dayIndex: Float64Array, outTempC: Float64Array): void {
  let stray = 0;
  for (let day = 0; day < air.days; day++) {
    stray = day === 0 ? nextNormal(state) : AIR_FIT.persistence * stray + DRIVE * nextNormal(state);
    const wider = 1 + AIR_FIT.swingPerIndex * (dayIndex[day]! - air.usualIndex[day]!);
    air.drawnMiddleC[day] = air.middleC[day]! + air.spreadK * stray;
    air.drawnHalfSwingK[day] = air.halfSwingK[day]! * Math.max(LEAST_SWING, wider);
  }
  const { stretchStart, dayOfStretch, leansTo, leanShare, swing, drawnMiddleC, drawnHalfSwingK } = air;
  for (let s = 0; s < dayOfStretch.length; s++) {
    const day = dayOfStretch[s]!;
    const other = leansTo[s]!;
    const end = stretchStart[s + 1]!;
    const middleC = drawnMiddleC[day]!;
    const halfSwingK = drawnHalfSwingK[day]!;
    const otherMiddleC = drawnMiddleC[other]!;
    const otherHalfSwingK = drawnHalfSwingK[other]!;
    for (let i = stretchStart[s]!; i < end; i++) {
      const here = middleC + halfSwingK * swing[i]!;
      const there = otherMiddleC + otherHalfSwingK * swing[i]!;
      outTempC[i] = here + leanShare[i]! * (there - here);
    }
  }
}
