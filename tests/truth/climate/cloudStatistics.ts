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
}

export function cloudStatistics(days: readonly HourlyDay[]): CloudStatistics {
  let square = 0;
  let cube = 0;
  let darkest = 0;
  let brightest = 0;
  const lagged = [0, 0];
  for (const { ghiWm2, clearWm2, index } of days) {
    const off = ghiWm2.map((ghi, hour) => ghi / clearWm2[hour]! - index);
    const total = clearWm2.reduce((sum, clear) => sum + clear, 0);
    square += off.reduce((sum, value, hour) => sum + clearWm2[hour]! * value ** 2, 0) / total;
    cube += off.reduce((sum, value, hour) => sum + clearWm2[hour]! * value ** 3, 0) / total;
    darkest += index + Math.min(...off);
    brightest += index + Math.max(...off);
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
  };
}
