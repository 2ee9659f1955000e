import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { clearSky } from "../../../engine/sky/clearSky.ts";
import { solarHour } from "../../../engine/sky/solarDay.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";
import type { HourlyDay } from "./cloudStatistics.ts";

/** Hours in which a cloudless sky gives less than this say little: instruments and clear-sky models stray at low sun. */
const LOW_SUN_WM2 = 100;
const FEWEST_HOURS = 6;
const HOUR_MS = 3_600_000;
const PARTS = 12;
/** Haze at which the clearest hours of each file come to an index of about 1. */
const TURBIDITY = { golden: 3.5, albuquerque: 3.5, lyngby: 2.7, leuven: 3 };

interface Listed {
  file: string;
  lat: number;
  lon: number;
  elev: number;
  utcOffset: number;
  rows: number;
}

/** A measured day: its file, and the true solar time of its hours' middles. */
interface MeasuredDay extends HourlyDay {
  readonly month: string;
  readonly site: { readonly latitudeDeg: number; readonly longitudeDeg: number; readonly elevationM: number };
  /** Middle of each hour, UTC. */
  readonly timesMs: Float64Array;
  readonly solarHour: Float64Array;
}

/** The measured days beside this checkout (Golden, Albuquerque, Lyngby, Leuven); none where the folder is not there. */
export function measuredDays(): MeasuredDay[] {
  const folder = fileURLToPath(new URL("../../../../shared/data/hourly/", import.meta.url));
  if (!existsSync(folder)) return [];
  const listed = JSON.parse(readFileSync(`${folder}index.json`, "utf8")) as Listed[];
  return listed
    .filter(({ rows }) => rows > 100)
    .flatMap((site) => daysOf(site, readFileSync(folder + site.file, "utf8")));
}

function daysOf(site: Listed, text: string): MeasuredDay[] {
  const rows = text
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","));
  const startMs = rows.map((row) => Date.parse(`${row[0]}Z`) - site.utcOffset * HOUR_MS);
  const timesMs = Float64Array.from(
    startMs.flatMap((start) => Array.from({ length: PARTS }, (_, k) => start + ((k + 0.5) / PARTS) * HOUR_MS)),
  );
  const turbidity = Object.entries(TURBIDITY).find(([name]) => site.file.startsWith(name))![1];
  const sun = sunTrack(site.lat, site.lon, timesMs);
  const { ghiWm2 } = clearSky(sun, timesMs, site.lon, site.elev, turbidity);
  const byDay = new Map<number, { ghi: number[]; clear: number[]; time: number[] }>();
  rows.forEach((row, i) => {
    const clear = ghiWm2.subarray(i * PARTS, (i + 1) * PARTS).reduce((sum, value) => sum + value, 0) / PARTS;
    if (clear < LOW_SUN_WM2 || row[1] === "") return;
    const day = Math.floor((startMs[i]! + site.lon * 240_000) / (24 * HOUR_MS));
    const hours = byDay.get(day) ?? { ghi: [], clear: [], time: [] };
    byDay.set(day, hours);
    hours.ghi.push(Number(row[1]));
    hours.clear.push(clear);
    hours.time.push(startMs[i]! + HOUR_MS / 2);
  });
  return [...byDay.values()]
    .filter(({ ghi }) => ghi.length >= FEWEST_HOURS)
    .map(({ ghi, clear, time }) => ({
      month: site.file.replace(".csv", ""),
      site: { latitudeDeg: site.lat, longitudeDeg: site.lon, elevationM: site.elev },
      timesMs: Float64Array.from(time),
      solarHour: Float64Array.from(time, (timeMs) => solarHour(timeMs, site.lon)),
      ghiWm2: Float64Array.from(ghi),
      clearWm2: Float64Array.from(clear),
      index: ghi.reduce((sum, value) => sum + value, 0) / clear.reduce((sum, value) => sum + value, 0),
    }));
}
