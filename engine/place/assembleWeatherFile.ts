import type { ProblemList } from "../scenario/problemList.ts";
import { clipped } from "../scenario/shown.ts";
import type { WeatherFile, WeatherReading } from "./weatherFile.ts";

/** The quantities a weather file can hold, as we name their columns. */
export type WeatherColumn = "ghi" | "dni" | "dhi" | "temp_c" | "wind_ms";

/** One line of data: where it stands, when its interval starts, and its cells as written (undefined: no such column). */
export interface WeatherLine {
  readonly line: number;
  readonly startMs: number;
  readonly cells: Readonly<Record<WeatherColumn, string | undefined>>;
}

/** What a format knows before its numbers are read. */
export interface WeatherHead {
  readonly format: WeatherFile["format"];
  readonly latitudeDeg: number | null;
  readonly longitudeDeg: number | null;
  readonly elevationM: number | null;
  readonly utcOffsetH: number;
  readonly stepMinutes: number;
  readonly notes: readonly string[];
  /** What this format writes where it has no value. */
  readonly missing: Readonly<Record<WeatherColumn, readonly number[]>>;
}

interface Range {
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
}

const RANGES: Record<WeatherColumn, Range> = {
  ghi: { label: "GHI", unit: "W/m²", low: 0, high: 1500 },
  dni: { label: "DNI", unit: "W/m²", low: 0, high: 1500 },
  dhi: { label: "DHI", unit: "W/m²", low: 0, high: 1500 },
  temp_c: { label: "temperature", unit: "°C", low: -90, high: 70 },
  wind_ms: { label: "wind", unit: "m/s", low: 0, high: 100 },
};
const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/**
 * Checks times and values line by line and makes the arrays. GHI must be complete. Another column with missing values is
 * left out whole, and a note says so. All problems are gathered before giving up.
 */
export function assembleWeatherFile(
  head: WeatherHead,
  lines: readonly WeatherLine[],
  problems: ProblemList,
): WeatherReading {
  if (lines.length === 0 && problems.isEmpty()) {
    problems.add("empty-file", [], "The file has no lines of data; choose a file with one line per hour.");
  }
  const typicalYear = checkTimes(head, lines, problems);
  const notes = [...head.notes];
  const column = (name: WeatherColumn) => numbersOf(name, head, lines, problems, notes);
  const ghiWm2 = column("ghi");
  const dniWm2 = column("dni");
  const dhiWm2 = column("dhi");
  const tempC = column("temp_c");
  const windMs = column("wind_ms");
  if (ghiWm2 === null || !problems.isEmpty()) return { ok: false, problems: problems.problems() };
  const { format, latitudeDeg, longitudeDeg, elevationM, utcOffsetH, stepMinutes } = head;
  const startMs = Float64Array.from(lines, (line) => line.startMs);
  return {
    ok: true,
    file: {
      format,
      latitudeDeg,
      longitudeDeg,
      elevationM,
      utcOffsetH,
      stepMinutes,
      startMs,
      typicalYear,
      ghiWm2,
      dniWm2,
      dhiWm2,
      tempC,
      windMs,
      notes,
    },
  };
}

/** @returns whether the months come from different years */
function checkTimes(head: WeatherHead, lines: readonly WeatherLine[], problems: ProblemList): boolean {
  const stepMs = head.stepMinutes * MINUTE_MS;
  const say = (timeMs: number) => clockText(timeMs, head.utcOffsetH);
  const seen = new Map<number, number>();
  let typicalYear = false;
  for (let i = 0; i < lines.length; i++) {
    const { line, startMs } = lines[i]!;
    const twin = seen.get(startMs);
    seen.set(startMs, line);
    if (twin !== undefined) {
      const message = `Line ${line} gives the interval from ${say(startMs)} again, which line ${twin} already has; take one of them out.`;
      problems.add("duplicate-hour", ["line", line], message);
      continue;
    }
    const before = lines[i - 1];
    if (before === undefined || startMs === before.startMs + stepMs) continue;
    const fresh = startsAnotherMonth(before.startMs, startMs, stepMs, head.utcOffsetH);
    if (fresh !== null) {
      typicalYear ||= fresh === "another year";
      continue;
    }
    if (startMs < before.startMs) {
      const message = `Line ${line} goes back in time, from ${say(before.startMs)} to ${say(startMs)}; sort the lines by time.`;
      problems.add("time-order", ["line", line], message);
    } else if (startMs < before.startMs + stepMs) {
      const message = `Line ${line} starts at ${say(startMs)}, less than ${head.stepMinutes} minutes after the line before; keep all intervals of one length.`;
      problems.add("uneven-step", ["line", line], message);
    } else {
      const from = say(before.startMs + stepMs);
      const message = `Before line ${line} there is a gap: ${from} is missing (next comes ${say(startMs)}); fill in the missing lines.`;
      problems.add("time-gap", ["line", line], message);
    }
  }
  return typicalYear;
}

/**
 * Typical years are sewn together at the ends of months, and leave 29 February out; neither is a gap.
 * @returns null where the step is neither
 */
function startsAnotherMonth(
  beforeMs: number,
  startMs: number,
  stepMs: number,
  utcOffsetH: number,
): "another year" | "no leap day" | null {
  const end = new Date(beforeMs + stepMs + utcOffsetH * 3_600_000);
  const start = new Date(startMs + utcOffsetH * 3_600_000);
  const startsMonth = start.getUTCDate() === 1 && start.getTime() % DAY_MS === 0;
  if (!startsMonth || end.getTime() % DAY_MS !== 0) return null;
  const leapDayLeft = end.getUTCMonth() === 1 && end.getUTCDate() === 29;
  if (!leapDayLeft && end.getUTCDate() !== 1) return null;
  const endMonth = leapDayLeft ? 2 : end.getUTCMonth();
  if (endMonth !== start.getUTCMonth()) return null;
  return end.getUTCFullYear() === start.getUTCFullYear() ? "no leap day" : "another year";
}

function numbersOf(
  name: WeatherColumn,
  head: WeatherHead,
  lines: readonly WeatherLine[],
  problems: ProblemList,
  notes: string[],
): Float64Array | null {
  if (lines.every(({ cells }) => cells[name] === undefined)) return null;
  const { label, unit, low, high } = RANGES[name];
  const values = new Float64Array(lines.length);
  let absent = 0;
  let firstAbsent = 0;
  for (let i = 0; i < lines.length; i++) {
    const { line, cells } = lines[i]!;
    const cell = (cells[name] ?? "").trim();
    const value = cell === "" ? Number.NaN : Number(cell);
    if (cell === "" || head.missing[name].includes(value)) {
      if (absent++ === 0) firstAbsent = line;
      if (name !== "ghi") continue;
      const found = cell === "" ? "is empty" : `is ${clipped(cell)}, which stands for a missing value`;
      const message = `Line ${line}: ${label} ${found}; fill it in from the hours around it, or use another file.`;
      problems.add("missing-value", ["line", line, name], message);
    } else if (!Number.isFinite(value)) {
      const message = `Line ${line}: ${label} is "${clipped(cell)}", which is no number; write it in ${unit} with a decimal point.`;
      problems.add("not-a-number", ["line", line, name], message);
    } else if (value < low || value > high) {
      const night = low === 0 && value < 0 ? "; write 0 where a sensor reads a little below it" : "";
      const message = `Line ${line}: ${label} is ${clipped(cell)} ${unit}, outside ${low} to ${high}${night || "; correct it or use another file"}.`;
      problems.add("out-of-range", ["line", line, name], message);
    }
    values[i] = value;
  }
  if (absent > 0 && name !== "ghi") {
    const lost = absent === lines.length ? "on every line" : `on ${absent} lines, first on line ${firstAbsent}`;
    notes.push(`The file's ${label} is missing ${lost}, so that column was left out.`);
    return null;
  }
  return values;
}

/** A time on the file's own clock, as a person reads it: "2012-06-01 14:00". */
export function clockText(timeMs: number, utcOffsetH: number): string {
  return new Date(timeMs + utcOffsetH * 3_600_000).toISOString().slice(0, 16).replace("T", " ");
}
