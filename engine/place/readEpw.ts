import { makeProblemList } from "../scenario/problemList.ts";
import { clipped } from "../scenario/shown.ts";
import { assembleWeatherFile, type WeatherLine } from "./assembleWeatherFile.ts";
import { placeOfHeader } from "./placeOfHeader.ts";
import type { WeatherReading } from "./weatherFile.ts";

const HEADER_LINES = 8;
/** Positions in a line of data, counted from 0. */
const AT = { year: 0, month: 1, day: 2, hour: 3, temp_c: 6, ghi: 13, dni: 14, dhi: 15, wind_ms: 21 };
const NEEDED = 22;

/**
 * Reads an EnergyPlus weather file: eight header lines, the first of them LOCATION, then one line an hour; hours run from
 * 1 to 24, each the end of its hour, local standard time.
 * @param rows the whole file, cell by cell
 * @see EnergyPlus documentation, Auxiliary Programs, "EnergyPlus Weather File (EPW) Data Dictionary"
 */
export function readEpw(rows: readonly string[][]): WeatherReading {
  const problems = makeProblemList();
  const location = rows[0] ?? [];
  if ((location[0] ?? "").trim().toUpperCase() !== "LOCATION") {
    const message = "Line 1 does not start with LOCATION, as an EPW file does; choose another file or another ending.";
    problems.add("bad-header", ["line", 1], message);
    return { ok: false, problems: problems.problems() };
  }
  const place = placeOfHeader(location, { latitude: 6, longitude: 7, utcOffset: 8, elevation: 9 }, 1, problems);
  const periods = rows[HEADER_LINES - 1] ?? [];
  const perHour = Number(periods[2] ?? "");
  if ((periods[0] ?? "").trim().toUpperCase() !== "DATA PERIODS") {
    const message =
      "Line 8 does not start with DATA PERIODS, as an EPW file's last header line does; download it again.";
    problems.add("bad-header", ["line", 8], message);
  } else if (perHour !== 1) {
    const message = `Line 8 promises ${clipped(periods[2] ?? "no")} lines an hour; only EPW files with one line an hour are read.`;
    problems.add("bad-header", ["line", 8], message);
  }
  if (!problems.isEmpty()) return { ok: false, problems: problems.problems() };

  const lines: WeatherLine[] = [];
  for (let i = HEADER_LINES; i < rows.length; i++) {
    const row = rows[i]!;
    const line = i + 1;
    if (row.length === 1 && row[0]!.trim() === "") continue;
    if (row.length < NEEDED) {
      const message = `Line ${line} is cut short: it has ${row.length} values, at least ${NEEDED} are needed; download the file again.`;
      problems.add("truncated-line", ["line", line], message);
      continue;
    }
    const startMs = hourStartMs(row, place.utcOffsetH);
    if (startMs === null) {
      const when = clipped(row.slice(0, 4).join(","));
      const message = `Line ${line}: "${when}" is no year, month, day and hour from 1 to 24; correct it.`;
      problems.add("bad-time", ["line", line], message);
      continue;
    }
    const { ghi, dni, dhi, temp_c, wind_ms } = AT;
    lines.push({
      line,
      startMs,
      cells: { ghi: row[ghi], dni: row[dni], dhi: row[dhi], temp_c: row[temp_c], wind_ms: row[wind_ms] },
    });
  }
  const missing = { ghi: [9999, -9900], dni: [9999, -9900], dhi: [9999, -9900], temp_c: [99.9, 9999], wind_ms: [999] };
  return assembleWeatherFile({ format: "epw", ...place, stepMinutes: 60, notes: [], missing }, lines, problems);
}

function hourStartMs(row: readonly string[], utcOffsetH: number): number | null {
  const [year, month, day, hour] = [AT.year, AT.month, AT.day, AT.hour].map((at) => Number(row[at])) as [
    number,
    number,
    number,
    number,
  ];
  if (![year, month, day, hour].every(Number.isInteger) || year < 1900 || year > 2200) return null;
  const midnightMs = Date.UTC(year, month - 1, day);
  if (new Date(midnightMs).getUTCMonth() !== month - 1 || day < 1 || hour < 1 || hour > 24) return null;
  return midnightMs + (hour - 1 - utcOffsetH) * 3_600_000;
}
