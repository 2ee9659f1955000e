import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { record, recordSkipped } from "../record.ts";
import { afternoonLessMorning, type CloudErrors, type CloudStatistics, cloudStatistics } from "./cloudStatistics.ts";
import { drawnAfternoons, type SiteDay } from "./drawnAfternoons.ts";
import { drawnDays } from "./drawnDays.ts";
import { measuredDays } from "./measuredHours.ts";

const stored = JSON.parse(readFileSync(new URL("../data/hourly-cloud.json", import.meta.url), "utf8")) as {
  bins: ({ from: number; to: number } & CloudStatistics & CloudErrors)[];
  afternoons: ({ month: string; mean: number; error: number } & SiteDay["site"])[];
  days: { index: number; clearWm2: number[]; month: number; firstMs: number }[];
};
const sun = stored.days.map(({ index, clearWm2 }) => ({ index, clearWm2: Float64Array.from(clearWm2) }));
const MEASURED = `${stored.days.length} measured days: NREL SRRL Golden, Sandia Albuquerque, DTU Lyngby, KU Leuven`;
const inBin = <Day extends { index: number }>(days: readonly Day[], { from, to }: { from: number; to: number }) =>
  days.filter(({ index }) => index >= from && index < to);

/** Smaller errors than these are those of a handful of days that happen to agree. */
const LEAST_ERROR = { spread: 0.005, r1: 0.05, overBright: 0.01 };

test.each([
  ["60-minute", 1],
  ["10-minute", 6],
])(
  "drawn hours are as restless, remember as much and are over-bright as often as measured ones in each class of day, %s steps",
  (steps, perHour) => {
    const drawn = drawnDays(sun, perHour, 60);
    const off = stored.bins.flatMap((bin) => {
      const got = cloudStatistics(inBin(drawn, bin));
      return (["spread", "r1", "overBright"] as const).map((name) => ({
        name: `${name} of ${bin.from}–${bin.to}`,
        errors: Math.abs(got[name] - bin[name]) / Math.max(LEAST_ERROR[name], bin[`${name}Error`]),
      }));
    });
    const worst = Math.max(...off.map(({ errors }) => errors));
    const rms = Math.sqrt(off.reduce((sum, { errors }) => sum + errors ** 2, 0) / off.length);
    const row = { source: MEASURED, unit: "sampling errors", n: off.length };
    const what = `hours within days (spread, correlation of successive hours, share over 1.05 of a clear sky) by nine classes of day, ${steps} steps`;
    record({
      ...row,
      what: `${what}, worst`,
      tolerance: 2.6,
      why: "of 27 figures one lies beyond two and a half by chance in four cases of ten",
      worst,
    });
    record({ ...row, what: `${what}, rms`, tolerance: 1.4, why: "1 is as good as these days can tell", worst: rms });
    for (const { name, errors } of off) expect(errors, name).toBeLessThan(2.6);
    expect(rms).toBeLessThan(1.4);
  },
);

const HOUR_MS = 3_600_000;
const siteDays = (month: number) =>
  stored.days
    .filter((day) => day.month === month)
    .map(({ index, clearWm2, firstMs }) => ({
      index,
      clearWm2: Float64Array.from(clearWm2),
      site: stored.afternoons[month]!,
      timesMs: Float64Array.from(clearWm2, (_, hour) => firstMs + hour * HOUR_MS),
    }));

test("over high ground in summer afternoons are duller than mornings by as much as measured, and in lowlands no more than mornings", () => {
  const drawn = stored.afternoons.map((_, month) => drawnAfternoons(siteDays(month), 100));
  const off = stored.afternoons.map(({ month, mean, error }, k) => ({
    month,
    errors: Math.abs(drawn[k]! - mean) / Math.max(0.015, error),
  }));
  record({
    what: "clear-sky index after noon less that before, mean of a month's days, worst of eight months",
    source: MEASURED,
    tolerance: 2.1,
    why: "two high months carry the law, and differ by more than their errors; of six lowland months one is two errors brighter after noon",
    worst: Math.max(...off.map(({ errors }) => errors)),
    unit: "sampling errors",
    n: off.length,
  });
  for (const { month, errors } of off) expect(errors, month).toBeLessThan(2.1);
  const golden = drawn[stored.afternoons.findIndex(({ month }) => month.startsWith("golden"))]!;
  expect(golden).toBeLessThan(-0.12);
  // Without a law of the hour the same months are off by up to six errors.
  const flat = stored.afternoons.map(({ mean, error }) => Math.abs(mean) / Math.max(0.015, error));
  expect(Math.max(...flat)).toBeGreaterThan(5);
});

test("a nearly cloudless day is quiet: most hours alike, a cloud now and then", () => {
  const bin = stored.bins.at(-1)!;
  const { spread, r1, skew } = cloudStatistics(inBin(drawnDays(sun, 1, 60), bin));
  expect(spread).toBeLessThan(0.065);
  expect(r1).toBeLessThan(0.25);
  expect(skew).toBeLessThan(-2);
});

// Graham and Hollands found a mean correlation of 0.54 ± 0.14 between successive hours' clearness within a day, independent of
// place (V. A. Graham and K. G. T. Hollands, A method to generate synthetic hourly solar radiation globally, Solar Energy 44 (1990)
// 333–341, abstract). Theirs is about the hour's own trend, ours about the day's index.
test.each([
  ["60-minute", 1],
  ["10-minute", 6],
])("an hour remembers the hour before as published, %s steps", (steps, perHour) => {
  const broken = sun.filter(({ index }) => index > 0.3 && index < 0.9);
  const { r1 } = cloudStatistics(drawnDays(broken, perHour, 60));
  record({
    what: `correlation of successive hours within a day, ${steps} steps`,
    source: "Graham and Hollands, Solar Energy 44 (1990) 333: 0.54 ± 0.14",
    tolerance: 0.1,
    why: "well inside the published scatter between days; measured here 0.41 to 0.59 by class",
    worst: Math.abs(r1 - 0.54),
    unit: "",
    n: broken.length,
  });
  expect(Math.abs(r1 - 0.54)).toBeLessThan(0.1);
});

test("a dull day's hours are skewed to the bright side, a bright day's to the dark side, as measured", () => {
  const drawn = drawnDays(sun, 1, 60);
  for (const bin of stored.bins.filter(({ skew, to }) => Math.abs(skew) > 0.5 && to < 1)) {
    const { skew } = cloudStatistics(inBin(drawn, bin));
    expect(Math.sign(skew)).toBe(Math.sign(bin.skew));
    expect(Math.abs(skew)).toBeGreaterThan(0.3);
  }
});

const measured = measuredDays();
if (measured.length === 0) {
  const skipped = "no measured hours beside this checkout";
  recordSkipped({ what: "kept statistics of measured hours against the hours", source: MEASURED, skipped });
  console.warn(`Skipped: the kept statistics of hours are not worked out again (${skipped}).`);
}
test.skipIf(measured.length === 0)("the kept statistics are those of the measured hours", () => {
  let worst = 0;
  for (const bin of stored.bins) {
    const now = cloudStatistics(inBin(measured, bin));
    expect(now.days).toBe(bin.days);
    worst = Math.max(worst, Math.abs(now.spread - bin.spread), Math.abs(now.r1 - bin.r1), Math.abs(now.r2 - bin.r2));
  }
  record({
    what: "kept statistics of measured hours against the hours",
    source: MEASURED,
    tolerance: 0.00006,
    why: "kept to four decimals",
    worst,
    unit: "",
    n: stored.bins.length * 3,
  });
  expect(worst).toBeLessThan(0.00006);
});

// Whether afternoons are cloudier than mornings: said in docs/fits/hourly-cloud.md, and not drawn, because one month of eight shows it.
test.skipIf(measured.length === 0)(
  "only a June at the foot of the Rockies has afternoons much cloudier than mornings",
  () => {
    const months = [...new Set(measured.map(({ month }) => month))];
    const mean = (month: string) => {
      const off = afternoonLessMorning(measured.filter((day) => day.month === month));
      return off.reduce((sum, value) => sum + value, 0) / off.length;
    };
    expect(months.filter((month) => mean(month) < -0.1)).toEqual(["golden-co-2012-06"]);
    expect(months.filter((month) => mean(month) > 0.1)).toEqual([]);
  },
);
