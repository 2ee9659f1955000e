import { existsSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { ClearnessYear } from "./clearnessStatistics.ts";

/** A long record of daily clearness, cut into calendar years. */
export interface LongRecord {
  readonly id: string;
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number | null;
  readonly climate: string;
  readonly source: string;
  readonly licence: string;
  readonly years: readonly ClearnessYear[];
}

/** Years with fewer days than this are left out. */
const FEWEST_DAYS = 150;

/** The long daily records beside this checkout; none where the folder is not there. */
export function longRecords(): LongRecord[] {
  const folder = fileURLToPath(new URL("../../../../shared/data/daily-kt/", import.meta.url));
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => name.endsWith(".json"))
    .sort()
    .map((name) => readRecord(JSON.parse(readFileSync(folder + name, "utf8"))));
}

interface StoredRecord {
  id: string;
  name: string;
  lat: number;
  lon: number;
  elev: number | null;
  climate: string;
  source: string;
  licence: string;
  start: string;
  ktMilli: (number | null)[];
}

function readRecord(stored: StoredRecord): LongRecord {
  const byYear = new Map<number, { kt: number[]; month: number[] }>();
  stored.ktMilli.forEach((milli, i) => {
    const date = new Date(Date.parse(stored.start) + i * 86_400_000);
    const year = date.getUTCFullYear();
    const days = byYear.get(year) ?? { kt: [], month: [] };
    byYear.set(year, days);
    days.kt.push(milli === null ? Number.NaN : milli / 1000);
    days.month.push(date.getUTCMonth());
  });
  const years = [...byYear.values()]
    .filter(({ kt }) => kt.filter((value) => !Number.isNaN(value)).length >= FEWEST_DAYS)
    .map(({ kt, month }) => ({ kt: Float64Array.from(kt), month: Uint8Array.from(month) }));
  return {
    id: stored.id,
    name: stored.name,
    latitudeDeg: stored.lat,
    longitudeDeg: stored.lon,
    elevationM: stored.elev,
    climate: stored.climate,
    source: stored.source,
    licence: stored.licence,
    years,
  };
}
