/**
 * `npx tsx docs/fits/hourlyCloud.ts`: the spread of hours within a day and their memory, measured and drawn. Needs the
 * measured hours beside the checkout. Add `write` to rewrite tests/truth/data/hourly-cloud.json.
 */
import { writeFileSync } from "node:fs";
import { cloudStatistics } from "../../tests/truth/climate/cloudStatistics.ts";
import { drawnDays } from "../../tests/truth/climate/drawnDays.ts";
import { measuredDays } from "../../tests/truth/climate/measuredHours.ts";

const days = measuredDays();
const members = 200;
/** Edges of the classes of days by their index. */
const INDEX_EDGES = [0, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.1];

for (const [name, set] of Object.entries({
  measured: days,
  "drawn, 60 min": drawnDays(days, 1, members),
  "drawn, 10 min": drawnDays(days, 6, members),
})) {
  console.log(`\n${name}`);
  console.log("day index      days   spread   r(1 h)   r(2 h)   darkest  brightest  skew");
  for (let bin = 0; bin + 1 < INDEX_EDGES.length; bin++) {
    const [low, high] = [INDEX_EDGES[bin]!, INDEX_EDGES[bin + 1]!];
    const s = cloudStatistics(set.filter(({ index }) => index >= low && index < high));
    const numbers = [s.spread, s.r1, s.r2, s.darkest, s.brightest, s.skew].map((value) => value.toFixed(3).padStart(8));
    console.log(`${low.toFixed(2)}–${high.toFixed(2)}  ${String(s.days).padStart(8)} ${numbers.join(" ")}`);
  }
}

if (process.argv.includes("write")) {
  const round = (value: number) => Math.round(value * 10_000) / 10_000;
  const bins = INDEX_EDGES.slice(1).map((to, bin) => {
    const from = INDEX_EDGES[bin]!;
    const s = cloudStatistics(days.filter(({ index }) => index >= from && index < to));
    const figures = Object.fromEntries(Object.entries(s).map(([name, value]) => [name, round(value)]));
    return { from, to, ...figures };
  });
  const sun = days.map(({ clearWm2, index }) => ({ index: round(index), clearWm2: [...clearWm2].map(Math.round) }));
  const text = JSON.stringify({
    what: "How hours vary about their day's own clear-sky index (GHI over a cloudless sky's), by that index, and the cloudless sky of each day",
    source:
      "Measured hours: NREL SRRL, Golden, June 2012; Sandia National Laboratories, Albuquerque, May; DTU, Lyngby, June 2016 and March 2017. Statistics only.",
    how: "docs/fits/hourlyCloud.ts. Hours in which a cloudless sky gives under 100 W/m² are left out. spread: root mean square of hour less day, weighted by the cloudless sky; r1, r2: correlation one and two hours on.",
    bins,
    days: sun,
  });
  writeFileSync(
    "tests/truth/data/hourly-cloud.json",
    `${text.replaceAll('{"from"', '\n{"from"').replaceAll('{"index"', '\n{"index"')}\n`,
  );
}
