import type { Problem } from "../scenario/problem.ts";
import { clipped } from "../scenario/shown.ts";
import type { MeterFinding } from "./meterLog.ts";
import { METER_QUANTITIES, type MeterMapping, type MeterQuantity, TIME_FORMS } from "./meterMapping.ts";
import { METER_RANGE } from "./meterRange.ts";
import type { MeterReading } from "./meterReading.ts";
import { cellNumber, type MeterTable, meterTable } from "./meterTable.ts";
import { makeMeterTally } from "./meterTally.ts";
import { isClockOnly, isDated, readMeterTime, type ZoneClock, zoneClock } from "./meterTime.ts";
import { keptIn, unitFactor, unitOf } from "./meterUnits.ts";
import { orderedLog } from "./orderedLog.ts";
import { span } from "./span.ts";
import { suggestColumns } from "./suggestColumns.ts";
import { timeFormOf } from "./timeFormOf.ts";

/** Two months by the minute have 86,400 rows; longer logs are cut to the event. */
export const MOST_METER_ROWS = 400_000;
export const MOST_METER_BYTES = 10_000_000;
/** The widest meters write some sixty. */
const MOST_COLUMNS = 500;

type Columns = NonNullable<MeterMapping["columns"]>;

/** From rows so far apart on, it matters whether they are instants or means. */
const STAMP_MATTERS_MS = 240_000;

/**
 * Reads the log of a battery meter or solar controller: text with a line of titles and one line per row, parted by commas, semicolons
 * or tabs. What the mapping leaves open is found in the log; what cannot be found is asked for. Nothing is corrected unasked: rows that do not read
 * are left out and counted, the rest is said in `findings`, each with what to set in the mapping where that would fix it.
 * @param text the whole file, at most 10 million characters and 400,000 rows
 * @param mapping what is known of the log, such as the mapping that the last log of this meter was read with
 * @param zone the zone of the place, taken where neither the mapping nor the times say which clock the log keeps
 * @returns the log and the complete mapping it was read with; or what is wrong or undecided, and what could be found
 */
export function readMeterLog(text: string, mapping: MeterMapping = {}, zone = "UTC"): MeterReading {
  const refuse = (code: string, message: string, suggestion: MeterMapping = mapping): MeterReading => ({
    ok: false,
    problems: [{ code, path: [], message }],
    suggestion,
  });
  if (text.length > MOST_METER_BYTES) {
    const size = (text.length / 1e6).toFixed(1);
    return refuse(
      "log-too-large",
      `The log has ${size} MB, and at most 10 MB are read; cut it to the days of the event.`,
    );
  }
  const body = text.replace(/^\uFEFF/, "");
  if (body.trim() === "")
    return refuse("empty-log", "The log is empty; choose a file with titles and one line per reading.");
  const table = meterTable(body, mapping);
  if (table === null) {
    return refuse(
      "no-titles",
      "The log has no line of titles above its numbers; write one, such as time,charge %,bank V,bank A,PV W.",
    );
  }
  if (table.titles.length > MOST_COLUMNS) {
    return refuse(
      "too-many-columns",
      `The log has ${table.titles.length} columns, and at most ${MOST_COLUMNS} are read; take out those that are not needed.`,
    );
  }
  if (table.rows.length - table.firstRow > MOST_METER_ROWS) {
    const rows = table.rows.length - table.firstRow;
    return refuse(
      "too-many-rows",
      `The log has ${rows} rows, and at most ${MOST_METER_ROWS} are read; cut it to the days of the event.`,
    );
  }
  return readTable(table, mapping, zone);
}

function readTable(table: MeterTable, given: MeterMapping, zone: string): MeterReading {
  const { titles, rows, firstRow } = table;
  const suggested = suggestColumns(titles, rows.slice(firstRow, firstRow + 60), table.units);
  const columns = mergedColumns(suggested, given.columns ?? {});
  const problems: Problem[] = [];
  const at = (title: string | null | undefined) => (typeof title === "string" ? titles.indexOf(title) : -1);
  for (const [name, title] of Object.entries(columns)) {
    if (typeof title !== "string" || at(title) >= 0) continue;
    const message = `The mapping wants ${name} in the column "${clipped(title)}", which the log does not have (it has ${named(titles)}); name one of these.`;
    problems.push({ code: "no-such-column", path: ["columns", name], message });
  }
  const [dateAt, timeAt] = [at(columns.date), at(columns.time)];
  const dataRows = rows.slice(firstRow).filter((row) => row.some((cell) => cell.trim() !== ""));
  const base: MeterMapping = {
    delimiter: table.delimiter,
    decimal: table.decimal,
    zone: given.zone ?? zone,
    shiftMinutes: given.shiftMinutes ?? 0,
    stamp: given.stamp ?? "instant",
    columns,
  };
  const stop = (more: readonly Problem[], suggestion: MeterMapping = base): MeterReading => ({
    ok: false,
    problems: [...problems, ...more],
    suggestion: { ...suggestion, columns: { ...suggested, ...present(columns, titles) } },
  });
  const problem = (code: string, message: string): Problem => ({ code, path: ["columns"], message });
  if (dataRows.length === 0)
    return stop([
      problem("no-rows", "The log has titles and no rows beneath them; choose the file with the readings."),
    ]);
  if (typeof columns.time !== "string") {
    return stop([problem("no-time", `No column holds date and time (titles: ${named(titles)}); map time to one.`)]);
  }
  const quantities = METER_QUANTITIES.filter((quantity) => at(columns[quantity]) >= 0);
  if (quantities.length === 0 && problems.length === 0) {
    return stop([
      problem(
        "no-quantity",
        `No column is known as charge, volts, amperes or watts (titles: ${named(titles)}); map at least one.`,
      ),
    ]);
  }
  const units = unitsOf(table, columns, quantities, given.units ?? {});
  problems.push(...units.problems);
  const clock = zoneClock(base.zone!);
  if (clock === null) {
    const message = `zone is "${base.zone}", which is no zone that is known; write one such as Europe/Vienna, UTC or +01:00.`;
    problems.push({ code: "no-such-zone", path: ["zone"], message });
  }
  if (problems.length > 0 || clock === null) return stop([]);

  const dates = dataRows.map((row) => row[dateAt >= 0 ? dateAt : timeAt] ?? "");
  const form = given.timeForm ?? timeFormOf(dates);
  if (form === null) {
    const isClock = dateAt < 0 && isClockOnly(dates.find((cell) => cell.trim() !== "") ?? "");
    return stop([
      isClock
        ? problem(
            "no-date",
            `The column "${clipped(columns.time)}" holds times of day without a date; map date to the column that has it.`,
          )
        : problem(
            "no-time",
            `The column "${clipped(columns.time)}" holds "${(dates[0] ?? "").slice(0, 40)}", which is no date and time; map time to another column.`,
          ),
    ]);
  }
  if (form === "ambiguous") {
    const example = dates.find((cell) => isDated(cell))!.trim();
    const message = `Dates such as "${example}" read as day and month either way; set timeForm to dayFirst or monthFirst.`;
    return stop([{ code: "ambiguous-date", path: ["timeForm"], message }], { ...base, timeForm: "dayFirst" });
  }
  if (!TIME_FORMS.includes(form)) return stop([]);
  let reading = readRows(table, { ...given, ...base, ...units.mapping, timeForm: form }, quantities, {
    dateAt,
    timeAt,
    clock,
  });
  if (reading.ok)
    reading = { ...reading, findings: [...reading.findings, ...units.findings, ...unread(titles, columns)] };
  if (!reading.ok || given.stamp !== undefined || reading.log.usualMs < STAMP_MATTERS_MS) return reading;
  const { usualMs } = reading.log;
  const message = `Each row is taken for its instant; if the meter writes means of the ${span(usualMs)} up to it or from it on, set stamp to end or start, or sun and load come ${span(usualMs / 2)} off.`;
  const taken: MeterFinding = { code: "stamp-taken", message, rows: 0, line: null, proposal: { stamp: "end" } };
  return { ...reading, findings: [...reading.findings, taken] };
}

/** In what each column's numbers are: as the mapping says, a row of units, or the title; what is not usual is said. */
function unitsOf(
  { titles, units }: MeterTable,
  columns: Columns,
  quantities: readonly MeterQuantity[],
  given: NonNullable<MeterMapping["units"]>,
): {
  readonly mapping: Pick<MeterMapping, "units">;
  readonly problems: readonly Problem[];
  readonly findings: readonly MeterFinding[];
} {
  const found: NonNullable<MeterMapping["units"]> = {};
  const problems: Problem[] = [];
  const findings: MeterFinding[] = [];
  for (const quantity of quantities) {
    const title = columns[quantity]!;
    const unit = given[quantity] ?? (units[titles.indexOf(title)] || unitOf(title));
    if (unit === null || unit === undefined) continue;
    const factor = unitFactor(unit, quantity);
    if (factor === null) {
      const message = `"${clipped(title)}" is in ${unit}, which is no unit of ${quantity} (kept in ${keptIn(quantity)}); map ${quantity} to another column, or say its unit, as in ${quantity}=${clipped(title)}:${keptIn(quantity)}.`;
      problems.push({ code: "wrong-unit", path: ["units", quantity], message });
    } else if (factor !== 1) {
      found[quantity] = unit;
      const message = `"${clipped(title)}" is in ${unit}, and was turned into ${keptIn(quantity)}.`;
      findings.push({ code: "unit-taken", message, rows: 0, line: null, proposal: null });
    } else if (given[quantity] !== undefined) found[quantity] = unit;
  }
  return { mapping: Object.keys(found).length > 0 ? { units: found } : {}, problems, findings };
}

/** Columns that nothing was taken from: a person sees at once what was missed. */
function unread(titles: readonly string[], columns: Columns): MeterFinding[] {
  const taken = Object.values(columns);
  const rest = titles.filter((title) => !taken.includes(title));
  if (rest.length === 0) return [];
  const message = `Not read: ${named(rest)}.`;
  return [{ code: "not-read", message, rows: 0, line: null, proposal: null }];
}

/** Titles as a sentence lists them. */
function named(titles: readonly string[]): string {
  const more = titles.length > 30 ? ` and ${titles.length - 30} more` : "";
  return `${titles.slice(0, 30).map(clipped).join(", ")}${more}`;
}

/** What the mapping says, and what the titles suggest where it says nothing and the column is still free. */
function mergedColumns(suggested: Columns, given: Columns): Columns {
  const taken = new Set(Object.values(given));
  const hasDate = given.time !== undefined && given.time !== suggested.time;
  const free = Object.entries(suggested).filter(
    ([name, title]) => !taken.has(title ?? null) && !(name === "date" && hasDate),
  );
  return { ...Object.fromEntries(free), ...given };
}

function present(columns: Columns, titles: readonly string[]): Columns {
  return Object.fromEntries(
    Object.entries(columns).filter(([, title]) => typeof title === "string" && titles.includes(title)),
  );
}

interface TimeColumns {
  readonly dateAt: number;
  readonly timeAt: number;
  readonly clock: ZoneClock;
}

function readRows(
  table: MeterTable,
  mapping: MeterMapping,
  quantities: readonly MeterQuantity[],
  { dateAt, timeAt, clock }: TimeColumns,
): MeterReading {
  const { rows, firstRow, titles, decimal } = table;
  const tally = makeMeterTally();
  const times: number[] = [];
  const lines: number[] = [];
  const values = quantities.map((): number[] => []);
  const places = quantities.map((quantity) => titles.indexOf(mapping.columns![quantity]!));
  const chargeUnit = mapping.chargeUnit ?? chargeUnitOf(table, places[quantities.indexOf("charge")] ?? -1, mapping);
  const factors = quantities.map((quantity) => {
    if (quantity === "charge") return chargeUnit === "share" ? 100 : 1;
    return unitFactor(mapping.units?.[quantity] ?? keptIn(quantity), quantity) ?? 1;
  });
  let beforeMs = Number.NEGATIVE_INFINITY;
  for (let r = firstRow; r < rows.length; r++) {
    const row = rows[r]!;
    const line = r + 1;
    if (row.every((cell) => cell.trim() === "")) continue;
    if (row.length > titles.length && row.slice(titles.length).some((cell) => cell.trim() !== "")) {
      tally.add("wide", line);
      continue;
    }
    const written = `${dateAt >= 0 ? `${row[dateAt] ?? ""} ` : ""}${row[timeAt] ?? ""}`;
    const reading = readMeterTime(written, mapping.timeForm!);
    if (reading === null) {
      tally.add("time", line);
      continue;
    }
    const instantMs =
      reading.offsetMs === null ? clock.instantMs(reading.clockMs, beforeMs) : reading.clockMs - reading.offsetMs;
    if (!(Math.abs(instantMs) < 4e12)) {
      tally.add("time", line);
      continue;
    }
    beforeMs = instantMs;
    times.push(instantMs + mapping.shiftMinutes! * 60_000);
    lines.push(line);
    for (let q = 0; q < quantities.length; q++) {
      const quantity = quantities[q]!;
      const number = cellNumber(row[places[q]!] ?? "", decimal);
      const scaled = number === null ? null : number * factors[q]!;
      const [low, high] = METER_RANGE[quantity];
      let value = Number.NaN;
      if (scaled === null) tally.add(`unreadable ${quantity}`, line);
      else if (scaled < low || scaled > high) tally.add(`range ${quantity}`, line);
      else value = scaled;
      values[q]!.push(value);
    }
  }
  if (times.length < 2) {
    const code = times.length === 0 ? "no-rows" : "one-row";
    const first = tally.get("time") ?? tally.get("wide");
    const where = first === undefined ? "" : ` (${first.rows} rows did not read, the first on line ${first.line})`;
    const message = `The log has ${times.length === 0 ? "no row" : "only one row"} with a date and time that read${where}; check the mapping of time and its form.`;
    return { ok: false, problems: [{ code, path: ["columns", "time"], message }], suggestion: mapping };
  }
  return orderedLog({ mapping, chargeUnit, quantities, times, lines, values, tally });
}

/** A charge that never passes 1 and moves is a share of 1. */
function chargeUnitOf(table: MeterTable, place: number, mapping: MeterMapping): "percent" | "share" {
  if (place < 0 || /%/.test(mapping.columns?.charge ?? "")) return "percent";
  let highest = 0;
  for (let r = table.firstRow; r < table.rows.length; r++) {
    const value = cellNumber(table.rows[r]![place] ?? "", table.decimal);
    if (value !== null && value > highest) highest = value;
  }
  return highest <= 1.05 ? "share" : "percent";
}
