import type { Problem } from "../scenario/problem.ts";
import { clipped } from "../scenario/shown.ts";
import { currentSign } from "./currentSign.ts";
import type { MeterFinding, MeterLog } from "./meterLog.ts";
import { METER_QUANTITIES, type MeterMapping, type MeterQuantity, TIME_FORMS } from "./meterMapping.ts";
import { cellNumber, type MeterTable, meterTable } from "./meterTable.ts";
import { isClockOnly, isDated, readMeterTime, type ZoneClock, zoneClock } from "./meterTime.ts";
import { suggestColumns } from "./suggestColumns.ts";
import { timeFormOf } from "./timeFormOf.ts";

/** Two months by the minute have 86,400 rows; longer logs are cut to the event. */
export const MOST_METER_ROWS = 400_000;
export const MOST_METER_BYTES = 10_000_000;
/** The widest meters write some sixty. */
const MOST_COLUMNS = 500;
/** Gaps longer than so many usual intervals are named. */
const GAP_INTERVALS = 3;

type Columns = NonNullable<MeterMapping["columns"]>;

/** From rows so far apart on, it matters whether they are instants or means. */
const STAMP_MATTERS_MS = 240_000;

/** What a quantity may be; beyond it a cell is taken for a fault of the meter or of the mapping. */
const RANGE: Record<MeterQuantity, readonly [low: number, high: number, unit: string]> = {
  charge: [-0.001, 110, "%"],
  bankV: [1, 80, "V"],
  bankA: [-2000, 2000, "A"],
  bankW: [-60_000, 60_000, "W"],
  pvW: [-50, 60_000, "W"],
  loadW: [-50, 60_000, "W"],
  loadA: [-5, 2000, "A"],
  usedAh: [-50_000, 50_000, "Ah"],
};

export type MeterReading =
  | { ok: true; log: MeterLog; mapping: MeterMapping; findings: readonly MeterFinding[] }
  | { ok: false; problems: readonly Problem[]; suggestion: MeterMapping };

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
  const suggested = suggestColumns(titles, rows.slice(firstRow, firstRow + 60));
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
  const reading = readRows(table, { ...given, ...base, timeForm: form }, quantities, { dateAt, timeAt, clock });
  if (!reading.ok || given.stamp !== undefined || reading.log.usualMs < STAMP_MATTERS_MS) return reading;
  const { usualMs } = reading.log;
  const message = `Each row is taken for its instant; if the meter writes means of the ${span(usualMs)} up to it or from it on, set stamp to end or start, or sun and load come ${span(usualMs / 2)} off.`;
  const taken: MeterFinding = { code: "stamp-taken", message, rows: 0, line: null, proposal: { stamp: "end" } };
  return { ...reading, findings: [...reading.findings, taken] };
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

/** Counts what was met on the way, with the first line of each. */
function makeTally() {
  const met = new Map<string, { rows: number; line: number }>();
  return {
    add(code: string, line: number) {
      const before = met.get(code);
      if (before === undefined) met.set(code, { rows: 1, line });
      else before.rows++;
    },
    get: (code: string) => met.get(code),
  };
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
  const tally = makeTally();
  const times: number[] = [];
  const lines: number[] = [];
  const values = quantities.map((): number[] => []);
  const places = quantities.map((quantity) => titles.indexOf(mapping.columns![quantity]!));
  const chargePercent = mapping.chargeUnit ?? chargeUnitOf(table, places[quantities.indexOf("charge")] ?? -1, mapping);
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
      const scaled =
        number === null ? null : quantity === "charge" && chargePercent === "share" ? number * 100 : number;
      const [low, high] = RANGE[quantity];
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
  return orderedLog(mapping, quantities, chargePercent, times, lines, values, tally);
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

function orderedLog(
  mapping: MeterMapping,
  quantities: readonly MeterQuantity[],
  chargeUnit: "percent" | "share",
  times: readonly number[],
  lines: readonly number[],
  values: readonly (readonly number[])[],
  tally: ReturnType<typeof makeTally>,
): MeterReading {
  const findings: MeterFinding[] = [];
  const say = (
    code: string,
    message: string,
    rows = 0,
    line: number | null = null,
    proposal: MeterMapping | null = null,
  ) => findings.push({ code, message, rows, line, proposal });
  const total = times.length;
  rowFindings(tally, mapping, quantities, total, say);

  let backwards = 0;
  let backLine = 0;
  for (let k = 1; k < times.length; k++) {
    if (times[k]! < times[k - 1]!) {
      backwards++;
      if (backLine === 0) backLine = lines[k]!;
    }
  }
  const order = Array.from(times.keys());
  if (backwards > 0) {
    order.sort((a, b) => times[a]! - times[b]! || a - b);
    say(
      "out-of-order",
      `Time runs backwards ${backwards} times, first on line ${backLine}; the rows were put in order.`,
      backwards,
      backLine,
    );
  }
  const kept: number[] = [];
  let twice = 0;
  let differing = 0;
  let twiceLine = 0;
  for (const k of order) {
    const before = kept.at(-1);
    if (before === undefined || times[k]! > times[before]!) {
      kept.push(k);
      continue;
    }
    twice++;
    if (twiceLine === 0) twiceLine = lines[k]!;
    if (values.some((column) => !Object.is(column[k], column[before]))) differing++;
  }
  if (twice > 0) {
    const differ = differing > 0 ? `, ${differing} of them with other values` : "";
    say(
      "duplicates",
      `${twice} rows repeat a time${differ}, first on line ${twiceLine}; the first row of each time was kept.`,
      twice,
      twiceLine,
    );
  }
  if (kept.length < 2) {
    const message = "All rows of the log have the same time; check the mapping of time and its form.";
    return { ok: false, problems: [{ code: "one-time", path: ["columns", "time"], message }], suggestion: mapping };
  }
  const timeMs = Float64Array.from(kept, (k) => times[k]!);
  const usualMs = usualInterval(timeMs);
  gapFindings(
    timeMs,
    usualMs,
    kept.map((k) => lines[k]!),
    say,
  );

  const column = (quantity: MeterQuantity): Float64Array | null => {
    const q = quantities.indexOf(quantity);
    if (q < 0) return null;
    const cells = Float64Array.from(kept, (k) => values[q]![k]!);
    if (cells.some(Number.isFinite)) return cells;
    say(
      "empty-column",
      `The column "${clipped(mapping.columns![quantity]!)}" (${quantity}) holds no number; it is passed over.`,
      cells.length,
    );
    return null;
  };
  const charge = column("charge")?.map((percent) => Math.min(1, Math.max(0, percent / 100))) ?? null;
  const [pvW, bankV] = [column("pvW")?.map((watts) => Math.max(0, watts)) ?? null, column("bankV")];
  let [bankA, bankW] = [column("bankA"), column("bankW")];
  let usedAh = column("usedAh");
  if (usedAh !== null) {
    const sum = usedAh.reduce((total, ah) => total + (Number.isFinite(ah) ? ah : 0), 0);
    if (sum < 0)
      say(
        "used-negative",
        "Ampere-hours drawn are written below 0; they are read as drawn all the same.",
        usedAh.length,
      );
    usedAh = usedAh.map((ah) => Math.max(0, sum < 0 ? -ah : ah));
  }
  const flow = bankA ?? bankW;
  let sign = mapping.currentSign;
  if (flow !== null) {
    const seen = currentSign(flow, charge, pvW, bankV);
    if (sign === undefined && seen === null) {
      const message =
        "Nothing in the log tells whether current into the bank is written above or below 0; set currentSign to chargingPositive or chargingNegative.";
      return {
        ok: false,
        problems: [{ code: "sign-unknown", path: ["currentSign"], message }],
        suggestion: { ...mapping, chargeUnit, currentSign: "chargingPositive" },
      };
    }
    if (sign === undefined) {
      const how = seen === "chargingPositive" ? "above" : "below";
      say("sign-found", `Current into the bank is written ${how} 0, as charge, sun or volts in the log show.`);
    } else if (seen !== null && seen !== sign) {
      say("sign-doubtful", `The mapping says ${sign}, but charge, sun or volts in the log go the other way.`, 0, null, {
        currentSign: seen,
      });
    }
    sign ??= seen!;
    if (sign === "chargingNegative") {
      bankA = bankA?.map((amperes) => -amperes) ?? null;
      bankW = bankW?.map((watts) => -watts) ?? null;
    }
  }
  const log: MeterLog = {
    timeMs,
    usualMs,
    stamp: mapping.stamp!,
    chargeShare: charge,
    bankV,
    bankA,
    bankW,
    pvW,
    loadW: column("loadW")?.map((watts) => Math.max(0, watts)) ?? null,
    loadA: column("loadA")?.map((amperes) => Math.max(0, amperes)) ?? null,
    usedAh,
    zone: mapping.zone!,
  };
  const read: MeterMapping = { ...mapping, ...(sign === undefined ? {} : { currentSign: sign }) };
  if (quantities.includes("charge")) read.chargeUnit = chargeUnit;
  return { ok: true, log, mapping: read, findings };
}

type Say = (code: string, message: string, rows?: number, line?: number | null, proposal?: MeterMapping | null) => void;

function rowFindings(
  tally: ReturnType<typeof makeTally>,
  mapping: MeterMapping,
  quantities: readonly MeterQuantity[],
  total: number,
  say: Say,
): void {
  const time = tally.get("time");
  if (time !== undefined) {
    // A few titles or sums between the rows are usual; if most rows fail, the form is the suspect.
    const remedy = time.rows > total ? "; check the form of its dates" : "";
    say(
      "bad-time",
      `${time.rows} rows have no date and time that reads, the first on line ${time.line}; they were left out${remedy}.`,
      time.rows,
      time.line,
    );
  }
  const wide = tally.get("wide");
  if (wide !== undefined) {
    const remedy =
      mapping.delimiter === "," ? "a decimal comma without quotes makes two cells of one" : "check the separator";
    say(
      "too-wide",
      `${wide.rows} rows have more cells than there are titles, the first on line ${wide.line}; they were left out (${remedy}).`,
      wide.rows,
      wide.line,
    );
  }
  for (const quantity of quantities) {
    const title = clipped(mapping.columns![quantity]!);
    const unreadable = tally.get(`unreadable ${quantity}`);
    if (unreadable !== undefined) {
      const other = mapping.decimal === "," ? "." : ",";
      const proposal: MeterMapping | null = unreadable.rows > total / 2 ? { decimal: other } : null;
      say(
        "unreadable",
        `${unreadable.rows} cells of "${title}" are no numbers with "${mapping.decimal}" as the decimal mark, the first on line ${unreadable.line}; they count as missing.`,
        unreadable.rows,
        unreadable.line,
        proposal,
      );
    }
    const range = tally.get(`range ${quantity}`);
    if (range !== undefined) {
      const [low, high, unit] = RANGE[quantity];
      say(
        "impossible",
        `${range.rows} cells of "${title}" lie outside ${Math.ceil(low)} to ${high} ${unit}, the first on line ${range.line}; they count as missing.`,
        range.rows,
        range.line,
      );
    }
  }
}

function usualInterval(timeMs: Float64Array): number {
  const intervals = new Float64Array(timeMs.length - 1);
  for (let k = 0; k < intervals.length; k++) intervals[k] = timeMs[k + 1]! - timeMs[k]!;
  intervals.sort();
  return intervals[Math.floor(intervals.length / 2)]!;
}

function gapFindings(timeMs: Float64Array, usualMs: number, lines: readonly number[], say: Say): void {
  let count = 0;
  let sumMs = 0;
  let longest = 0;
  let longestAt = -1;
  for (let k = 1; k < timeMs.length; k++) {
    const gapMs = timeMs[k]! - timeMs[k - 1]!;
    if (gapMs <= GAP_INTERVALS * usualMs) continue;
    count++;
    sumMs += gapMs;
    if (gapMs > longest) {
      longest = gapMs;
      longestAt = k;
    }
  }
  if (count === 0) return;
  const words = `${count === 1 ? "One gap" : `${count} gaps`} of more than ${span(GAP_INTERVALS * usualMs)}, ${span(sumMs)} together; the longest, ${span(longest)}, ends on line ${lines[longestAt]}.`;
  say("gaps", words, count, lines[longestAt]!);
}

/** A length of time in words: "40 s", "12 min", "3.5 h", "2.1 days". */
export function span(ms: number): string {
  if (ms < 90_000) return `${Math.round(ms / 1000)} s`;
  if (ms < 90 * 60_000) return `${Math.round(ms / 60_000)} min`;
  if (ms < 48 * 3_600_000) return `${+(ms / 3_600_000).toFixed(1)} h`;
  return `${+(ms / 86_400_000).toFixed(1)} days`;
}
