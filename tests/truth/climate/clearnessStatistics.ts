/** One stretch of consecutive days: a year of a record, or a member of an ensemble. NaN where a day is missing. */
export interface ClearnessYear {
  readonly kt: Float64Array;
  /** 0 January … 11 December, one per day. */
  readonly month: Uint8Array;
}

/** What a daily weather generator has to reproduce, of one calendar month. */
export interface ClearnessStatistics {
  readonly n: number;
  readonly mean: number;
  readonly sd: number;
  /** Root of the mean variance within single months. */
  readonly sdWithin: number;
  /** Standard deviation of the month's mean from year to year. */
  readonly sdBetween: number;
  /** Quantiles 5, 25, 50, 75, 95 %. */
  readonly q: readonly number[];
  /** Correlations 1, 2 and 3 days on, anomalies from the monthly means, three months centred on this one. */
  readonly r: readonly number[];
  /** Probability that a day, and that it and the next one and two, are all under Kt 0.35, by the month of the first. */
  readonly p: readonly number[];
  /** 5 % quantile of the mean over 3, 5, 7 days, by the month of the last. */
  readonly worst: readonly number[];
}

export const DARK_KT = 0.35;
const QUANTILES = [0.05, 0.25, 0.5, 0.75, 0.95];
const RUNS = [3, 5, 7];
const LAGS = [1, 2, 3];
/** A month with fewer days than this in the whole record has no statistics; one with fewer in a year has no mean. */
const FEWEST_DAYS = 60;
const FEWEST_IN_MONTH = 25;

/** The statistics of each calendar month; null where there is too little. */
export function clearnessStatistics(years: readonly ClearnessYear[]): (ClearnessStatistics | null)[] {
  const perMonth = Array.from({ length: 12 }, () => [] as number[]);
  for (const { kt, month } of years) {
    for (let i = 0; i < kt.length; i++) if (!Number.isNaN(kt[i]!)) perMonth[month[i]!]!.push(kt[i]!);
  }
  const means = perMonth.map((values) => mean(values));
  const anomalies = years.map(({ kt, month }) => kt.map((value, i) => value - means[month[i]!]!));
  const squares = new Float64Array(12);
  const counts = new Float64Array(12);
  const products = LAGS.map(() => new Float64Array(12));
  const pairs = LAGS.map(() => new Float64Array(12));
  const dark = [0, 1, 2].map(() => new Float64Array(12));
  const looked = [0, 1, 2].map(() => new Float64Array(12));
  const runs = RUNS.map(() => Array.from({ length: 12 }, () => [] as number[]));
  const within = Array.from({ length: 12 }, () => [] as number[]);
  const monthMeans = Array.from({ length: 12 }, () => [] as number[]);
  years.forEach(({ kt, month }, year) => {
    const anomaly = anomalies[year]!;
    for (let i = 0; i < kt.length; i++) {
      const m = month[i]!;
      if (!Number.isNaN(anomaly[i]!)) {
        squares[m]! += anomaly[i]! ** 2;
        counts[m]!++;
      }
      LAGS.forEach((lag, k) => {
        const product = anomaly[i]! * (anomaly[i + lag] ?? Number.NaN);
        if (Number.isNaN(product)) return;
        products[k]![m]! += product;
        pairs[k]![m]!++;
      });
      let allDark = true;
      for (let run = 0; run < 3; run++) {
        const value = kt[i + run] ?? Number.NaN;
        if (Number.isNaN(value)) break;
        allDark &&= value < DARK_KT;
        looked[run]![m]!++;
        if (allDark) dark[run]![m]!++;
      }
      RUNS.forEach((length, k) => {
        if (i + 1 < length) return;
        let sum = 0;
        for (let back = 0; back < length; back++) sum += kt[i - back]!;
        if (!Number.isNaN(sum)) runs[k]![m]!.push(sum / length);
      });
    }
    for (let m = 0; m < 12; m++) {
      const days = [...kt].filter((value, i) => month[i] === m && !Number.isNaN(value));
      if (days.length < FEWEST_IN_MONTH) continue;
      monthMeans[m]!.push(mean(days));
      within[m]!.push(sd(days) ** 2);
    }
  });
  return perMonth.map((values, m) => {
    if (values.length < FEWEST_DAYS) return null;
    const near = [(m + 11) % 12, m, (m + 1) % 12];
    const over = (array: Float64Array) => near.reduce((sum, k) => sum + array[k]!, 0);
    return {
      n: values.length,
      mean: means[m]!,
      sd: sd(values),
      sdWithin: Math.sqrt(mean(within[m]!)),
      sdBetween: sd(monthMeans[m]!),
      q: quantiles(values, QUANTILES),
      r: LAGS.map((_, k) => over(products[k]!) / over(pairs[k]!) / (over(squares) / over(counts))),
      p: dark.map((array, run) => array[m]! / looked[run]![m]!),
      worst: RUNS.map((_, k) => quantiles(runs[k]![m]!, [0.05])[0]!),
    };
  });
}

/** The figures that are compared, in a row, with names for a table. */
export const FIGURES = [
  ...["mean", "sd", "sdBetween", "q05", "q25", "q50", "q75", "q95", "r1", "r2", "r3", "p1", "p2", "p3"],
  ...["m3p5", "m5p5", "m7p5"],
] as const;

export function figuresOf(statistics: ClearnessStatistics): number[] {
  const { mean: average, sd: spread, sdBetween, q, r, p, worst } = statistics;
  return [average, spread, sdBetween, ...q, ...r, ...p, ...worst];
}

function quantiles(values: readonly number[], shares: readonly number[]): number[] {
  const sorted = Float64Array.from(values).sort();
  return shares.map((share) => {
    const place = share * (sorted.length - 1);
    const left = Math.floor(place);
    const right = Math.min(left + 1, sorted.length - 1);
    return sorted[left]! + (place - left) * (sorted[right]! - sorted[left]!);
  });
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Sample standard deviation, divided by n − 1. */
export function sd(values: readonly number[]): number {
  const average = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - average) ** 2, 0) / (values.length - 1));
}
