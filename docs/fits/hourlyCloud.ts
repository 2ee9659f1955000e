/**
 * `npx tsx docs/fits/hourlyCloud.ts`: the spread of hours within a day and their memory, measured and drawn. Needs the
 * measured hours beside the checkout. Add `write` to rewrite tests/truth/data/hourly-cloud.json.
 */
import { writeFileSync } from "node:fs";
import {
  afternoonLessMorning,
  type CloudErrors,
  cloudStatistics,
  type HourlyDay,
} from "../../tests/truth/climate/cloudStatistics.ts";
import { drawnAfternoons } from "../../tests/truth/climate/drawnAfternoons.ts";
import { drawnDays } from "../../tests/truth/climate/drawnDays.ts";
import { measuredDays } from "../../tests/truth/climate/measuredHours.ts";

/** How often days are drawn again for their sampling errors. */
const REDRAWN = 400;

const days = measuredDays();
const members = 200;
/** Edges of the classes of days by their index. */
const INDEX_EDGES = [0, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.12];

for (const [name, set] of Object.entries({
  measured: days,
  "drawn, 60 min": drawnDays(days, 1, members),
  "drawn, 10 min": drawnDays(days, 6, members),
})) {
  console.log(`\n${name}`);
  console.log("day index      days   spread   r(1 h)   r(2 h)   darkest  brightest  skew  over 1.05");
  for (let bin = 0; bin + 1 < INDEX_EDGES.length; bin++) {
    const [low, high] = [INDEX_EDGES[bin]!, INDEX_EDGES[bin + 1]!];
    const s = cloudStatistics(set.filter(({ index }) => index >= low && index < high));
    const numbers = [s.spread, s.r1, s.r2, s.darkest, s.brightest, s.skew, s.overBright].map((value) =>
      value.toFixed(3).padStart(8),
    );
    console.log(`${low.toFixed(2)}–${high.toFixed(2)}  ${String(s.days).padStart(8)} ${numbers.join(" ")}`);
  }
}

/** Index after noon less before, month by month, with its standard error. */
const afternoons = [...new Set(days.map(({ month }) => month))].map((month) => {
  const ofMonth = days.filter((day) => day.month === month);
  const off = afternoonLessMorning(ofMonth);
  const mean = off.reduce((sum, value) => sum + value, 0) / off.length;
  const sd = Math.sqrt(off.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (off.length - 1));
  return { month, ...ofMonth[0]!.site, days: off.length, mean, error: sd / Math.sqrt(off.length) };
});
console.log("\nindex after noon less before         measured       drawn");
for (const { month, days: count, mean, error } of afternoons) {
  const off = drawnAfternoons(
    days.filter((day) => day.month === month),
    members,
  );
  console.log(
    `${month.padEnd(24)} ${String(count).padStart(2)} days  ${mean.toFixed(3)} ± ${error.toFixed(3)}   ${off.toFixed(3)}`,
  );
}

if (process.argv.includes("write")) {
  const round = (value: number) => Math.round(value * 10_000) / 10_000;
  const bins = INDEX_EDGES.slice(1).map((to, bin) => {
    const from = INDEX_EDGES[bin]!;
    const s = cloudStatistics(days.filter(({ index }) => index >= from && index < to));
    const figures = Object.fromEntries(Object.entries(s).map(([name, value]) => [name, round(value)]));
    const errors = cloudErrors(days.filter(({ index }) => index >= from && index < to));
    return { from, to, ...figures, ...Object.fromEntries(Object.entries(errors).map(([k, v]) => [k, round(v)])) };
  });
  const sun = days.map(({ clearWm2, index, month, timesMs }) => ({
    index: round(index),
    month: afternoons.findIndex((of) => of.month === month),
    firstMs: timesMs[0]!,
    clearWm2: [...clearWm2].map(Math.round),
  }));
  const text = JSON.stringify({
    what: "How hours vary about their day's own clear-sky index (GHI over a cloudless sky's), by that index, and the cloudless sky of each day",
    source:
      "Measured hours: NREL SRRL, Golden, June 2012; Sandia National Laboratories, Albuquerque, May; DTU, Lyngby, June 2016, March 2017, November 2024 and February 2025; KU Leuven, January and April 2021. Statistics only.",
    how: "docs/fits/hourlyCloud.ts. Hours in which a cloudless sky gives under 100 W/m² are left out. spread: root mean square of hour less day, weighted by the cloudless sky; r1, r2: correlation one and two hours on; overBright: share of hours over 1.05; …Error: standard errors, days drawn again. afternoons: the index after true noon less that before, mean of the month's days, with its standard error. days: hours follow one another from firstMs, the middle of the first.",
    bins,
    afternoons: afternoons.map(({ mean, error, ...of }) => ({ ...of, mean: round(mean), error: round(error) })),
    days: sun,
  });
  writeFileSync(
    "tests/truth/data/hourly-cloud.json",
    `${text.replaceAll('{"from"', '\n{"from"').replaceAll('{"index"', '\n{"index"').replaceAll('{"month"', '\n{"month"')}\n`,
  );
}

/** Standard errors over days drawn again with replacement (Efron 1979), by a fixed sequence. */
function cloudErrors(days: readonly HourlyDay[]): CloudErrors {
  let seed = 1;
  const next = () => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 2 ** 32;
  };
  const drawn = Array.from({ length: REDRAWN }, () =>
    cloudStatistics(days.map(() => days[Math.floor(next() * days.length)]!)),
  );
  const sd = (values: number[]) => {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  };
  return {
    spreadError: sd(drawn.map(({ spread }) => spread)),
    r1Error: sd(drawn.map(({ r1 }) => r1)),
    overBrightError: sd(drawn.map(({ overBright }) => overBright)),
  };
}
