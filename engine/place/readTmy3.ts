import { makeProblemList } from "../scenario/problemList.ts";
import { clipped } from "../scenario/shown.ts";
import { assembleWeatherFile, type WeatherColumn, type WeatherLine } from "./assembleWeatherFile.ts";
import { placeOfHeader } from "./placeOfHeader.ts";
import type { WeatherReading } from "./weatherFile.ts";

/** Our name of each column, and how its title starts in the file. */
const TITLES: Record<WeatherColumn, string> = {
  ghi: "GHI (W/m^2)",
  dni: "DNI (W/m^2)",
  dhi: "DHI (W/m^2)",
  temp_c: "Dry-bulb (C)",
  wind_ms: "Wspd (m/s)",
};
const MISSING = [-9900, 9999, -9999];

/**
 * Reads the TMY3 format of the US National Solar Radiation Data Base: a line about the place, a line of titles, then one
 * line an hour; the time is the end of the hour, local standard time, 01:00 to 24:00.
 * @param rows the whole file, cell by cell
 * @see S. Wilcox and W. Marion, Users Manual for TMY3 Data Sets, NREL/TP-581-43156, 2008
 */
export function readTmy3(rows: readonly string[][]): WeatherReading {
  const problems = makeProblemList();
  const place = placeOfHeader(rows[0] ?? [], { latitude: 4, longitude: 5, utcOffset: 3, elevation: 6 }, 1, problems);
  const titles = (rows[1] ?? []).map((title) => title.trim().toLowerCase());
  const columnOf = (title: string) => titles.indexOf(title.toLowerCase());
  const dateAt = titles.findIndex((title) => title.startsWith("date"));
  const timeAt = titles.findIndex((title) => title.startsWith("time"));
  const at = Object.fromEntries(Object.entries(TITLES).map(([name, title]) => [name, columnOf(title)])) as Record<
    WeatherColumn,
    number
  >;
  for (const [title, found] of [
    ["Date (MM/DD/YYYY)", dateAt],
    ["Time (HH:MM)", timeAt],
    [TITLES.ghi, at.ghi],
  ] as const) {
    if (found >= 0) continue;
    const message = `Line 2 has no column "${title}"; a TMY3 file names its columns there, so download it again.`;
    problems.add("missing-column", ["line", 2, title], message);
  }
  if (dateAt < 0 || timeAt < 0 || at.ghi < 0) return { ok: false, problems: problems.problems() };

  const needed = Math.max(dateAt, timeAt, ...Object.values(at)) + 1;
  const lines: WeatherLine[] = [];
  for (let i = 2; i < rows.length; i++) {
    const row = rows[i]!;
    const line = i + 1;
    if (row.length === 1 && row[0]!.trim() === "") continue;
    if (row.length < needed) {
      const message = `Line ${line} is cut short: it has ${row.length} values, ${needed} are needed; download the file again.`;
      problems.add("truncated-line", ["line", line], message);
      continue;
    }
    const startMs = hourStartMs(row[dateAt]!, row[timeAt]!, place.utcOffsetH);
    if (startMs === null) {
      const message = `Line ${line}: "${clipped(row[dateAt]!)} ${clipped(row[timeAt]!)}" is no time of the form MM/DD/YYYY, 01:00 to 24:00; correct it.`;
      problems.add("bad-time", ["line", line], message);
      continue;
    }
    const cell = (name: WeatherColumn) => (at[name] < 0 ? undefined : row[at[name]]);
    lines.push({
      line,
      startMs,
      cells: { ghi: cell("ghi"), dni: cell("dni"), dhi: cell("dhi"), temp_c: cell("temp_c"), wind_ms: cell("wind_ms") },
    });
  }
  const missing = { ghi: MISSING, dni: MISSING, dhi: MISSING, temp_c: MISSING, wind_ms: MISSING };
  return assembleWeatherFile({ format: "tmy3", ...place, stepMinutes: 60, notes: [], missing }, lines, problems);
}

function hourStartMs(date: string, time: string, utcOffsetH: number): number | null {
  const day = /^\s*(\d{1,2})\/(\d{1,2})\/(\d{4})\s*$/.exec(date);
  const hour = /^\s*(\d{1,2}):00\s*$/.exec(time);
  if (!day || !hour) return null;
  const [month, monthDay, year] = [Number(day[1]), Number(day[2]), Number(day[3])];
  const hourEnding = Number(hour[1]);
  const midnightMs = Date.UTC(year, month - 1, monthDay);
  if (hourEnding < 1 || hourEnding > 24 || new Date(midnightMs).getUTCMonth() !== month - 1 || monthDay < 1)
    return null;
  return midnightMs + (hourEnding - 1 - utcOffsetH) * 3_600_000;
}
