import { toGrid } from "../grid.ts";
import { requireRange } from "../require.ts";
import { dailyExtraterrestrialWhM2 } from "./dailyExtraterrestrialWhM2.ts";
import { LARGEST_KT } from "./dayClearIndex.ts";
import { monthlyCourse } from "./monthlyCourse.ts";

const ROUNDS = 8;
/** A month with less light above the air than this, Wh/m² a day, tells nothing by what arrives of it. */
const LEAST_WHM2 = 50;
/** For a place whose year has no month with light, which does not exist. */
const NO_MONTH = 0.4;
const YEAR = Array.from({ length: 365 }, (_, day) => new Date(Date.UTC(2025, 0, 1 + day)).toISOString().slice(0, 10));
const MONTH_OF_DAY = YEAR.map((date) => Number(date.slice(5, 7)) - 1);

/**
 * The monthly clearness of which a month's stated light on the level is the mean: each day's H0 times the clearness on its way from one
 * month's middle to the next's (`monthlyCourse`) adds up to it. In October at 60° H0 falls by half from the first to the
 * last, and one figure for all its days would be 48 % too bright at the end. Held at 0.9; months without light take their neighbours'.
 * @param monthlyKwhM2 mean daily light on the level, January first
 */
export function clearnessOfGhi(monthlyKwhM2: readonly number[], latitudeDeg: number): number[] {
  requireRange({ latitudeDeg }, -90, 90);
  const h0 = YEAR.map((date) => dailyExtraterrestrialWhM2(latitudeDeg, Date.parse(`${date}T12:00:00Z`)));
  const meanOf = (ofDay: (day: number) => number) => {
    const sum = new Float64Array(12);
    const days = new Float64Array(12);
    MONTH_OF_DAY.forEach((month, day) => {
      sum[month]! += ofDay(day);
      days[month]!++;
    });
    return sum.map((total, month) => total / days[month]!);
  };
  const lit = meanOf((day) => h0[day]!).map((wh) => (wh >= LEAST_WHM2 ? wh : 0));
  let kt = borrowed(monthlyKwhM2.map((kwh, month) => (lit[month]! > 0 ? held((1000 * kwh) / lit[month]!) : null)));
  for (let round = 0; round < ROUNDS; round++) {
    const course = monthlyCourse(kt, YEAR);
    const got = meanOf((day) => course[day]! * h0[day]!);
    kt = borrowed(
      kt.map((clearness, month) => {
        if (lit[month] === 0) return null;
        return got[month]! > 0 ? held((clearness * 1000 * monthlyKwhM2[month]!) / got[month]!) : clearness;
      }),
    );
  }
  return kt.map(toGrid);
}

function held(kt: number): number {
  return Math.min(LARGEST_KT, kt);
}

function borrowed(monthly: readonly (number | null)[]): number[] {
  return monthly.map((value, month) => {
    for (let away = 0; away <= 6; away++) {
      const sides = [monthly[(month + 12 - away) % 12]!, monthly[(month + away) % 12]!].filter((side) => side !== null);
      if (sides.length > 0) return value ?? sides.reduce((sum, side) => sum + side, 0) / sides.length;
    }
    return NO_MONTH;
  });
}
