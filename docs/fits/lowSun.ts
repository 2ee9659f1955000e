/**
 * `npx tsx docs/fits/lowSun.ts`: how near to measured days any split of GHI can come under a low winter sun, whatever its form. Needs the
 * measured hours beside the checkout.
 */
import {
  byBeam,
  engineLight,
  type MeasuredMonth,
  measuredLight,
  measuredMonths,
  planeDays,
} from "../../tests/truth/sky/measuredMonths.ts";

const TILT_DEG = 40;
const WINTER = ["lyngby-dk-2024-11", "lyngby-dk-2025-02", "leuven-be-2021-01"];
const DIM_WM2 = 2;
const ROUNDS = 25;
/** Squared distance in widths beyond which an hour is not asked. */
const FAR = 24;

/** Share of beam in one measured hour, and what a split could go by. */
interface LitHour {
  readonly month: MeasuredMonth;
  readonly at: number;
  readonly day: number;
  readonly beamShare: number;
  readonly weight: number;
  readonly features: Readonly<Record<Feature, number>>;
}
type Feature = "kt" | "height" | "day" | "beside" | "change" | "clearest";
/** Widths of the kernel, in units of each feature: half of what hours of one kind differ by. */
const WIDTH: Record<Feature, number> = { kt: 0.05, height: 3, day: 0.1, beside: 0.1, change: 0.07, clearest: 0.12 };

const months = measuredMonths();
const hours = months.flatMap(litHours);
const winter = months.filter(({ name }) => WINTER.includes(name));
const site = ({ name }: MeasuredMonth) => name.split("-")[0];

function litHours(month: MeasuredMonth): LitHour[] {
  const { ghiWm2, isThere, clearGhiWm2, day, heightDeg } = month;
  const { kt, dayKt, before, after } = month.hours;
  const measured = measuredLight(month);
  const clearest = new Map<number, number>();
  const above = (i: number) => kt[i]! / (0.83 - 0.56 * Math.exp(-0.06 * heightDeg[i]!));
  kt.forEach((_, i) => {
    if (heightDeg[i]! > 4) clearest.set(day[i]!, Math.max(clearest.get(day[i]!) ?? 0, above(i)));
  });
  return ghiWm2.flatMap((ghi, at) => {
    if (!isThere[at] || clearGhiWm2[at]! <= 1 || ghi <= DIM_WM2) return [];
    const sky = measured.dhiWm2.slice(at * 12, at * 12 + 12).reduce((sum, value) => sum + value, 0) / 12;
    const [earlier, later] = [kt[before[at]!]!, kt[after[at]!]!];
    const features = {
      kt: kt[at]!,
      height: heightDeg[at]!,
      day: dayKt[at]!,
      beside: 0.5 * (earlier + later),
      change: Math.sqrt(((kt[at]! - earlier) ** 2 + (kt[at]! - later) ** 2) / 2),
      clearest: Math.min(1.4, clearest.get(day[at]!) ?? 0),
    };
    const beamShare = Math.max(0, 1 - sky / ghi);
    const sine = Math.max(0.1, Math.sin((heightDeg[at]! * Math.PI) / 180));
    return [{ month, at, day: day[at]!, beamShare, weight: (ghi / sine) ** 2, features }];
  });
}

/** Weighted least squares of a plane through the hours round `of` (local linear regression: Cleveland, J. Am. Stat. Assoc. 74 (1979) 829–836). */
function fromAlike(
  of: LitHour,
  names: readonly Feature[],
  leftOut: (other: LitHour) => boolean,
  among: readonly LitHour[],
): number {
  const rows: number[][] = [];
  const shares: number[] = [];
  const weights: number[] = [];
  for (const other of among) {
    let far = 0;
    for (const name of names) far += ((other.features[name] - of.features[name]) / WIDTH[name]) ** 2;
    if (far > FAR || leftOut(other)) continue;
    rows.push([1, ...names.map((name) => (other.features[name] - of.features[name]) / WIDTH[name])]);
    shares.push(other.beamShare);
    weights.push(other.weight * Math.exp(-0.5 * far));
  }
  return rows.length === 0 ? 0 : leastSquares(rows, shares, weights, 0.02)[0]!;
}

/** Solves the normal equations, with a little held back so that few hours do not swing. */
function leastSquares(
  rows: readonly number[][],
  wanted: readonly number[],
  weights: readonly number[],
  ridge: number,
): number[] {
  const n = rows[0]!.length;
  const total = weights.reduce((sum, weight) => sum + weight, 0) || 1;
  const a = Array.from({ length: n }, (_, j) =>
    Array.from({ length: n + 1 }, (_, k) => (j === k ? (j === 0 ? 1e-9 : ridge) : 0)),
  );
  rows.forEach((row, i) => {
    const weight = weights[i]! / total;
    if (weight < 1e-12) return;
    for (let j = 0; j < n; j++) {
      for (let k = 0; k < n; k++) a[j]![k]! += weight * row[j]! * row[k]!;
      a[j]![n]! += weight * row[j]! * wanted[i]!;
    }
  });
  for (let j = 0; j < n; j++) {
    for (let below = j + 1; below < n; below++) {
      const factor = a[below]![j]! / a[j]![j]!;
      for (let k = j; k <= n; k++) a[below]![k]! -= factor * a[j]![k]!;
    }
  }
  const found = new Array<number>(n).fill(0);
  for (let j = n - 1; j >= 0; j--) {
    let rest = a[j]![n]!;
    for (let k = j + 1; k < n; k++) rest -= a[j]![k]! * found[k]!;
    found[j] = rest / a[j]![j]!;
  }
  return found;
}

/** Ridley's curve with numbers of its own, fitted to these hours (iteratively reweighted least squares). */
function refitted(known: readonly LitHour[]): (of: LitHour) => number {
  const row = ({ features }: LitHour) => [1, features.kt, features.height / 10, features.day, features.beside];
  const rows = known.map(row);
  let numbers = [-5, 6, 0, 1.5, 1.5];
  const curve = (of: readonly number[]) => 1 / (1 + Math.exp(-of.reduce((sum, x, k) => sum + x * numbers[k]!, 0)));
  for (let round = 0; round < ROUNDS; round++) {
    const slope = rows.map((of) => Math.max(1e-4, curve(of) * (1 - curve(of))));
    const moved = leastSquares(
      rows.map((of, i) => of.map((x) => x * slope[i]!)),
      rows.map((of, i) => known[i]!.beamShare - curve(of)),
      known.map(({ weight }) => weight),
      1e-4,
    );
    numbers = numbers.map((number, k) => number + 0.5 * moved[k]!);
  }
  return (of) => curve(row(of));
}

/** Total over measured, and rms of days over their mean, in percent, of the winter months together. */
function error(beamOf: (month: MeasuredMonth) => readonly number[] | null): string {
  const got = winter.flatMap((month) => {
    const beam = beamOf(month);
    return planeDays(month, beam === null ? engineLight(month) : byBeam(month, beam), TILT_DEG);
  });
  const real = winter.flatMap((month) => planeDays(month, measuredLight(month), TILT_DEG));
  const mean = real.reduce((sum, wh) => sum + wh, 0) / real.length;
  const off = got.reduce((sum, wh, i) => sum + wh - real[i]!, 0) / real.length;
  const square = got.reduce((sum, wh, i) => sum + (wh - real[i]!) ** 2, 0) / real.length;
  return `${((100 * off) / mean).toFixed(1).padStart(5)} ${((100 * Math.sqrt(square)) / mean).toFixed(1).padStart(5)}`;
}

type LeftOut = (of: LitHour, other: LitHour) => boolean;
const day: LeftOut = (of, other) => of.month === other.month && of.day === other.day;
const month: LeftOut = (of, other) => of.month === other.month;
const station: LeftOut = (of, other) => site(of.month) === site(other.month);

const split = (shareOf: (of: LitHour) => number) => (of: MeasuredMonth) => {
  const beam = of.ghiWm2.map(() => 0);
  for (const hour of hours.filter((one) => one.month === of)) {
    beam[hour.at] = Math.max(0, Math.min(0.95, shareOf(hour))) * of.ghiWm2[hour.at]!;
  }
  return beam;
};

console.log(`the engine                                              ${error(() => null)}`);
console.log(
  `measured: GHI less DHI instead of DNI                   ${error((of) => {
    const zero = site(of) === "leuven" ? 7 : 0;
    return of.ghiWm2.map((ghi, i) => Math.max(0, ghi - of.dhiWm2[i]! - (ghi > 0 ? zero : 0)));
  })}`,
);
console.log(
  "\nhours like it, by                                left out: day,  a day of winter,       month,     station",
);
const sets: Feature[][] = [
  ["kt", "height"],
  ["kt", "height", "beside"],
  ["kt", "height", "day"],
  ["kt", "height", "change"],
  ["kt", "height", "day", "beside"],
  ["kt", "height", "day", "change"],
  ["kt", "height", "day", "clearest"],
];
const inWinter = hours.filter((hour) => winter.includes(hour.month));
for (const names of sets) {
  const by = (leftOut: LeftOut, of = hours) =>
    error(split((hour) => fromAlike(hour, names, (other) => leftOut(hour, other), of)));
  console.log(`${names.join(", ").padEnd(46)} ${by(day)}     ${by(day, inWinter)}  ${by(month)}  ${by(station)}`);
}
console.log("\nRidley's curve, five numbers fitted to");
console.log(`winter itself            ${error(split(refitted(inWinter)))}`);
console.log(`all eight months         ${error(split(refitted(hours)))}`);
for (const [name, leftOut] of [
  ["all but the month", month],
  ["all but the station", station],
] as const) {
  const fits = new Map(
    winter.map((of) => {
      const one = hours.find((hour) => hour.month === of)!;
      return [of, refitted(hours.filter((other) => !leftOut(one, other)))];
    }),
  );
  console.log(`${name.padEnd(24)} ${error(split((hour) => fits.get(hour.month)!(hour)))}`);
}
