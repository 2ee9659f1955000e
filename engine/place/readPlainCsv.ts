import { makeProblemList, type ProblemList } from "../scenario/problemList.ts";
import { clipped } from "../scenario/shown.ts";
import { assembleWeatherFile, type WeatherColumn, type WeatherLine } from "./assembleWeatherFile.ts";
import type { WeatherReading } from "./weatherFile.ts";

const COLUMNS = ["time", "ghi", "dni", "dhi", "temp_c", "wind_ms"] as const;
type Column = (typeof COLUMNS)[number];
const MISSING = [9999, -9900, -9999];
const MINUTE_MS = 60_000;
/** Columns that a sentence names; a line of a million commas has more. */
const MOST_NAMED = 12;
/** Spaces belong to what follows them: two runs side by side would be tried in every split, in the square of their length. */
const TIME = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d)(?:\.0+)?)?(?:\s*(Z|[+-]\d\d(?::?\d\d)?))?$/i;

/**
 * Reads our own plain table: comma-separated, one title line, one line per interval.
 *
 *     # latitude: 46.95
 *     # longitude: 7.45
 *     # elevation: 540
 *     # utcOffset: 1
 *     time,ghi,dni,dhi,temp_c,wind_ms
 *     2026-06-01T10:00,612,702,118,18.4,2.1
 *
 * `time` is the start of the interval, ISO 8601: either with an offset ("2026-06-01T10:00+01:00", "…Z"), or without one on
 * a clock that stands `utcOffset` hours ahead of UTC the year round. `ghi` is required, the other columns may be left out;
 * irradiance W/m², mean over the interval. Intervals are of one length, 1 to 60 minutes. The first line that
 * does not start with # holds the titles; place lines may be left out.
 * @param rows the whole file, cell by cell
 */
export function readPlainCsv(rows: readonly string[][]): WeatherReading {
  const problems = makeProblemList();
  const facts = readFacts(rows, problems);
  const titleRow = rows.findIndex((row) => !isBlank(row) && !isRemark(row));
  if (titleRow < 0) {
    problems.add("empty-file", [], "The file has no line of titles and no data; the titles are time, ghi, and so on.");
    return { ok: false, problems: problems.problems() };
  }
  const { at, notes } = readTitles(rows[titleRow]!, titleRow + 1, problems);
  if (at.time === undefined || at.ghi === undefined) return { ok: false, problems: problems.problems() };

  const lines: WeatherLine[] = [];
  let firstOffsetH: number | null = null;
  let offsetAsked = false;
  for (let i = titleRow + 1; i < rows.length; i++) {
    const row = rows[i]!;
    const line = i + 1;
    if (isBlank(row) || isRemark(row)) continue;
    const width = rows[titleRow]!.length;
    if (row.length !== width) {
      const message = `Line ${line} has ${row.length} values where the titles name ${width}; complete the line.`;
      problems.add("truncated-line", ["line", line], message);
      continue;
    }
    const time = readTime(row[at.time]!);
    if (time === null) {
      const message = `Line ${line}: time is "${clipped(row[at.time]!.trim())}", which is no date and time; write it as 2026-06-01T10:00 or 2026-06-01T10:00+02:00.`;
      problems.add("bad-time", ["line", line, "time"], message);
      continue;
    }
    const offsetH: number | null = time.offsetH ?? facts.utcOffset;
    if (offsetH === null) {
      if (!offsetAsked) {
        const message = `Line ${line}: the time has no offset from UTC; add a line such as "# utcOffset: 1" at the top, or write every time with its offset.`;
        problems.add("no-utc-offset", ["line", line, "time"], message);
      }
      offsetAsked = true;
      continue;
    }
    firstOffsetH ??= offsetH;
    const cell = (name: WeatherColumn) => (at[name] === undefined ? undefined : row[at[name]]);
    lines.push({
      line,
      startMs: time.clockMs - offsetH * 3_600_000,
      cells: { ghi: cell("ghi"), dni: cell("dni"), dhi: cell("dhi"), temp_c: cell("temp_c"), wind_ms: cell("wind_ms") },
    });
  }
  return assembleWeatherFile(
    {
      format: "csv",
      latitudeDeg: facts.latitude,
      longitudeDeg: facts.longitude,
      elevationM: facts.elevation,
      utcOffsetH: facts.utcOffset ?? firstOffsetH ?? 0,
      stepMinutes: stepOf(lines, problems),
      notes,
      missing: { ghi: MISSING, dni: MISSING, dhi: MISSING, temp_c: MISSING, wind_ms: MISSING },
    },
    lines,
    problems,
  );
}

function isBlank(row: readonly string[]): boolean {
  return row.every((cell) => cell.trim() === "");
}

function isRemark(row: readonly string[]): boolean {
  return row[0]!.trimStart().startsWith("#");
}

interface Facts {
  latitude: number | null;
  longitude: number | null;
  elevation: number | null;
  utcOffset: number | null;
}

const FACTS: Record<string, { name: keyof Facts; low: number; high: number; unit: string }> = {
  latitude: { name: "latitude", low: -90, high: 90, unit: "degrees, north positive" },
  longitude: { name: "longitude", low: -180, high: 180, unit: "degrees, east positive" },
  elevation: { name: "elevation", low: -450, high: 9000, unit: "metres" },
  utcoffset: { name: "utcOffset", low: -12, high: 14, unit: "hours ahead of UTC" },
};

function readFacts(rows: readonly string[][], problems: ProblemList): Facts {
  const facts: Facts = { latitude: null, longitude: null, elevation: null, utcOffset: null };
  rows.forEach((row, i) => {
    if (!isRemark(row)) return;
    const remark = row.join(",").trim();
    const name = /^#\s*([a-z]+)\s*:/i.exec(remark)?.[1]?.toLowerCase() ?? "";
    if (!Object.hasOwn(FACTS, name)) return; // any other remark
    const fact = FACTS[name]!;
    const written = remark.slice(remark.indexOf(":") + 1).trim();
    const value = written === "" ? Number.NaN : Number(written);
    if (value >= fact.low && value <= fact.high) {
      facts[fact.name] = value;
      return;
    }
    const message = `Line ${i + 1}: ${fact.name} is "${clipped(written)}"; it must be a number from ${fact.low} to ${fact.high} (${fact.unit}).`;
    problems.add("bad-header", ["line", i + 1, fact.name], message);
  });
  return facts;
}

function readTitles(
  row: readonly string[],
  line: number,
  problems: ProblemList,
): { at: Partial<Record<Column, number>>; notes: string[] } {
  const at: Partial<Record<Column, number>> = {};
  const notes: string[] = [];
  const found = row.map((cell) => cell.trim());
  const more = found.length > MOST_NAMED ? ` and ${found.length - MOST_NAMED} more` : "";
  const named = `${found.slice(0, MOST_NAMED).map(clipped).join(", ")}${more}`;
  let unused = 0;
  found.forEach((title, i) => {
    const column = COLUMNS.find((name) => name === title.toLowerCase());
    if (column === undefined) {
      if (++unused <= MOST_NAMED) notes.push(`The column "${clipped(title)}" is not used.`);
    } else if (at[column] === undefined) at[column] = i;
    else {
      const message = `Line ${line} names the column ${column} twice; take one of them out.`;
      problems.add("duplicate-column", ["line", line, column], message);
    }
  });
  if (unused > MOST_NAMED) notes.push(`Another ${unused - MOST_NAMED} columns are not used.`);
  for (const column of ["time", "ghi"] as const) {
    if (at[column] !== undefined) continue;
    const remedy =
      row.length === 1 && row[0]!.includes(";")
        ? "save it with commas between the values, not semicolons"
        : `name the columns ${COLUMNS.join(", ")}`;
    const message = `Line ${line} has no column "${column}" (found: ${named}); ${remedy}.`;
    problems.add("missing-column", ["line", line, column], message);
  }
  return { at, notes };
}

/** The clock time as if it were UTC, and the offset written beside it, if any. */
function readTime(text: string): { clockMs: number; offsetH: number | null } | null {
  const part = TIME.exec(text.trim());
  if (!part) return null;
  const [year, month, day, hour, minute, second] = part.slice(1, 7).map((digits) => Number(digits ?? 0)) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const clockMs = Date.UTC(year, month - 1, day, hour, minute, second);
  const date = new Date(clockMs);
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day || minute > 59 || second > 59) return null;
  const offset = part[7];
  if (offset === undefined) return { clockMs, offsetH: null };
  if (offset.toUpperCase() === "Z") return { clockMs, offsetH: 0 };
  const hours = Number(offset.slice(1, 3)) + Number(offset.slice(3).replace(":", "")) / 60;
  return { clockMs, offsetH: offset.startsWith("-") ? -hours : hours };
}

/** The length of an interval: what most often lies between one line and the next. */
function stepOf(lines: readonly WeatherLine[], problems: ProblemList): number {
  const counts = new Map<number, number>();
  for (let i = 1; i < lines.length; i++) {
    const minutes = (lines[i]!.startMs - lines[i - 1]!.startMs) / MINUTE_MS;
    counts.set(minutes, (counts.get(minutes) ?? 0) + 1);
  }
  const [step] = [...counts].sort((a, b) => b[1] - a[1])[0] ?? [60];
  if (step >= 1 && step <= 60 && 60 % step === 0) return step;
  if (lines.length > 1 && step > 0) {
    const message = `The lines are ${step} minutes apart; intervals must be 60 minutes or a whole part of an hour, such as 30, 15 or 10.`;
    problems.add("bad-step", ["line", lines[1]!.line, "time"], message);
  }
  return 60;
}
