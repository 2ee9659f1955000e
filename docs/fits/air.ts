/**
 * `npx tsx docs/fits/air.ts`: how a day's air strays from its month and how its swing goes with the sky, from the measured
 * hours beside the checkout that have a temperature.
 */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { clearSky } from "../../engine/sky/clearSky.ts";
import { sunTrack } from "../../engine/sky/sunTrack.ts";

const folder = fileURLToPath(new URL("../../../shared/data/hourly/", import.meta.url));
if (!existsSync(folder)) throw new Error("There are no measured hours beside this checkout.");
const sites = JSON.parse(readFileSync(`${folder}index.json`, "utf8")) as {
  file: string;
  lat: number;
  lon: number;
  elev: number;
  utcOffset: number;
}[];
const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const cross = (a: number[], b: number[]) => mean(a.map((value, i) => (value - mean(a)) * (b[i]! - mean(b))));

let [products, squares, days] = [0, 0, 0];
for (const site of sites) {
  const rows = readFileSync(folder + site.file, "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","));
  if (rows.some((row) => !row[4]) || rows.length < 100) continue;
  const middleMs = Float64Array.from(rows, (row) => Date.parse(`${row[0]}Z`) + 1_800_000 - site.utcOffset * 3_600_000);
  const clear = clearSky(sunTrack(site.lat, site.lon, middleMs), middleMs, site.lon, site.elev, 3).ghiWm2;
  const byDay = new Map<number, number[]>();
  middleMs.forEach((timeMs, i) => {
    const day = Math.floor((timeMs + site.lon * 240_000) / 86_400_000);
    byDay.set(day, [...(byDay.get(day) ?? []), i]);
  });
  const whole = [...byDay.values()].filter((hours) => hours.length === 24);
  const temps = whole.map((hours) => hours.map((i) => Number(rows[i]![4])));
  const index = whole.map((hours) => mean(hours.map((i) => Number(rows[i]![1]))) / mean(hours.map((i) => clear[i]!)));
  const swing = temps.map((day) => Math.max(...day) - Math.min(...day));
  const middle = temps.map((day) => (Math.max(...day) + Math.min(...day)) / 2);
  const wider = swing.map((value) => value / mean(swing));
  products += whole.length * cross(index, wider);
  squares += whole.length * cross(index, index);
  days += whole.length;
  const figures = {
    days: whole.length,
    "mean swing, K": mean(swing),
    "swing per index": cross(index, wider) / cross(index, index),
    "sd of middle, K": Math.sqrt(cross(middle, middle)),
    "lag-1 of middle": cross(middle.slice(1), middle.slice(0, -1)) / cross(middle, middle),
    "middle with index": cross(middle, index) / Math.sqrt(cross(middle, middle) * cross(index, index)),
  };
  console.log(
    site.file,
    Object.entries(figures)
      .map(([name, value]) => `${name} ${value.toFixed(2)}`)
      .join("; "),
  );
}
console.log(`pooled over ${days} days: swing per index ${(products / squares).toFixed(2)}`);
