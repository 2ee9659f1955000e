/** The hours of one day in which the sun stands well above the horizon. */
export interface HourlyDay {
  readonly ghiWm2: Float64Array;
  readonly clearWm2: Float64Array;
  /** The day's light over a cloudless day's. */
  readonly index: number;
}

/** How hours vary about their day's own clear-sky index, weighted by a cloudless sky's light, over many days. */
export interface CloudStatistics {
  readonly days: number;
  /** Root mean square of the hours' index less the day's. */
  readonly spread: number;
  readonly r1: number;
  readonly r2: number;
  /** Mean of each day's darkest and brightest hour. */
  readonly darkest: number;
  readonly brightest: number;
  readonly skew: number;
  /** Share of hours that are brighter than the clear sky by a twentieth. */
  readonly overBright: number;
}

/** Hours this bright against a cloudless sky have light from cloud edges. */
const OVER_BRIGHT = 1.05;

export function cloudStatistics(days: readonly HourlyDay[]): CloudStatistics {
  let square = 0;
  let cube = 0;
  let darkest = 0;
  let brightest = 0;
  const lagged = [0, 0];
  let hours = 0;
  let overBright = 0;
  for (const { ghiWm2, clearWm2, index } of days) {
    const off = ghiWm2.map((ghi, hour) => ghi / clearWm2[hour]! - index);
    const total = clearWm2.reduce((sum, clear) => sum + clear, 0);
    square += off.reduce((sum, value, hour) => sum + clearWm2[hour]! * value ** 2, 0) / total;
    cube += off.reduce((sum, value, hour) => sum + clearWm2[hour]! * value ** 3, 0) / total;
    darkest += index + Math.min(...off);
    brightest += index + Math.max(...off);
    hours += off.length;
    overBright += off.filter((value) => value + index > OVER_BRIGHT).length;
    for (const lag of [1, 2]) {
      let products = 0;
      let weights = 0;
      for (let hour = lag; hour < off.length; hour++) {
        const weight = Math.sqrt(clearWm2[hour]! * clearWm2[hour - lag]!);
        products += weight * off[hour]! * off[hour - lag]!;
        weights += weight;
      }
      lagged[lag - 1]! += products / weights;
    }
  }
  const n = days.length;
  return {
    days: n,
    spread: Math.sqrt(square / n),
    r1: lagged[0]! / square,
    r2: lagged[1]! / square,
    darkest: darkest / n,
    brightest: brightest / n,
    skew: cube / n / (square / n) ** 1.5,
    overBright: overBright / hours,
  };
}

/** Sampling errors of the figures that drawn days are held to. */
export interface CloudErrors {
  readonly spreadError: number;
  readonly r1Error: number;
  readonly overBrightError: number;
}

/** A day's index after true noon less that before, for days with light on both sides. */
export function afternoonLessMorning(days: readonly (HourlyDay & { readonly solarHour: Float64Array })[]): number[] {
  return days.flatMap(({ ghiWm2, clearWm2, solarHour }) => {
    const [ghi, clear] = [
      [0, 0],
      [0, 0],
    ];
    solarHour.forEach((hour, k) => {
      const side = hour < 12 ? 0 : 1;
      ghi[side]! += ghiWm2[k]!;
      clear[side]! += clearWm2[k]!;
    });
    return clear[0]! > 0 && clear[1]! > 0 ? [ghi[1]! / clear[1]! - ghi[0]! / clear[0]!] : [];
  });
}
