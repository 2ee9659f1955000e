import { loggedSteps } from "../../actual/loggedSteps.ts";
import type { MeterFinding, MeterLog } from "../../meter/meterLog.ts";
import type { MeterMapping } from "../../meter/meterMapping.ts";
import type { TimeGrid } from "../../scenario/timeGrid.ts";
import { MOST_LOG_ROWS } from "../notebookLimits.ts";
import type { KeptLog } from "./doc.ts";

const COLUMNS = ["chargeShare", "bankV", "bankA", "bankW", "pvW", "loadW"] as const;
/** Digits behind the point that are kept: a charge to 0.01 %, volts and amperes to a thousandth, watts to a tenth. */
const DECIMALS: Readonly<Record<(typeof COLUMNS)[number], number>> = {
  chargeShare: 4,
  bankV: 3,
  bankA: 3,
  bankW: 1,
  pvW: 1,
  loadW: 1,
};
const MINUTE_MS = 60_000;
/** A row of a thinned log stands for one step and no more: a row reaches over one and a half of what is usual. */
const ROW_REACH = 1.5;

/** What a kept log knows of where it comes from. */
export interface LogOrigin {
  readonly name: string;
  readonly takenAt: string;
  readonly titles: readonly string[];
  readonly mapping: MeterMapping;
  readonly findings: readonly MeterFinding[];
}

type Rows = Pick<KeptLog, "stamp" | "startMs" | "usualMs" | "atMinutes" | (typeof COLUMNS)[number]>;

/**
 * Thins a log out for the notebook: means over the steps of the plan where its rows are closer than those, its own rows of the event's time
 * where they are not.
 * @returns the log, or why nothing of it can be kept
 */
export function keptLog(
  log: MeterLog,
  grid: TimeGrid,
  origin: LogOrigin,
): { readonly ok: true; readonly log: KeptLog } | { readonly ok: false; readonly sentence: string } {
  const times = Math.max(1, Math.ceil((grid.steps + 1) / MOST_LOG_ROWS));
  const stepMs = times * grid.stepMs;
  const rows =
    log.usualMs >= stepMs
      ? ownRows(log, grid)
      : stepRows(log, { ...grid, stepMs, steps: Math.ceil(grid.steps / times) });
  if (rows === null || rows.atMinutes.length < 2) {
    const day = (ms: number) => new Date(ms).toISOString().slice(0, 10);
    const [first, last] = [log.timeMs[0]!, log.timeMs.at(-1)!];
    const sentence = `The log runs from ${day(first)} to ${day(last)} and the event from ${day(grid.startMs)} to ${day(grid.startMs + grid.steps * grid.stepMs)}; they have no step in common. Take the log of these days, correct the log's clock, or put the plan's time where the log was written.`;
    return { ok: false, sentence };
  }
  const { name, takenAt, titles, mapping, findings } = origin;
  return {
    ok: true,
    log: {
      name: name.slice(0, 200) || "log",
      takenAt,
      zone: log.zone,
      ...rows,
      titles: titles.slice(0, 60).map((title) => title.slice(0, 300)),
      mapping: { ...(mapping as Record<string, never>) },
      findings: findings.slice(0, 60).map(({ message }) => message.slice(0, 2000)),
    },
  };
}

/** Rows that are as far apart as the plan's steps, or farther: kept as they are, within the event. */
function ownRows(log: MeterLog, grid: TimeGrid): Rows | null {
  const [fromMs, toMs] = [grid.startMs - log.usualMs, grid.startMs + grid.steps * grid.stepMs + log.usualMs];
  const inside = Array.from(log.timeMs.keys())
    .filter((k) => log.timeMs[k]! >= fromMs && log.timeMs[k]! <= toMs)
    .slice(0, MOST_LOG_ROWS);
  if (inside.length === 0) return null;
  const product = (of: Float64Array | null, volts: Float64Array | null) =>
    of === null || volts === null ? null : of.map((value, k) => value * volts[k]!);
  const of = {
    chargeShare: log.chargeShare,
    bankV: log.bankV,
    bankA: log.bankA,
    bankW: log.bankW,
    pvW: log.pvW,
    loadW: log.loadW ?? product(log.loadA, log.bankV),
  };
  const startMs = log.timeMs[inside[0]!]!;
  return {
    stamp: log.stamp,
    startMs,
    usualMs: log.usualMs,
    atMinutes: inside.map((k) => (log.timeMs[k]! - startMs) / MINUTE_MS),
    ...columnsOf(of, inside),
  };
}

function stepRows(log: MeterLog, grid: TimeGrid): Rows | null {
  const steps = loggedSteps(log, grid);
  const edges = Array.from({ length: grid.steps + 1 }, (_, i) => i);
  const inside = edges.filter((i) => COLUMNS.some((name) => Number.isFinite(steps[name]?.[i] ?? Number.NaN)));
  if (inside.length === 0) return null;
  return {
    stamp: "start",
    startMs: grid.startMs,
    usualMs: grid.stepMs / ROW_REACH,
    atMinutes: inside.map((i) => (i * grid.stepMs) / MINUTE_MS),
    ...columnsOf(steps, inside),
  };
}

function columnsOf(of: Readonly<Record<(typeof COLUMNS)[number], Float64Array | null>>, rows: readonly number[]) {
  return Object.fromEntries(
    COLUMNS.flatMap((name) => {
      const values = of[name];
      if (values === null) return [];
      const kept = rows.map((k) => {
        const value = values[k] ?? Number.NaN;
        return Number.isFinite(value) ? Number(value.toFixed(DECIMALS[name])) : null;
      });
      return [[name, kept]];
    }),
  ) as Pick<Rows, (typeof COLUMNS)[number]>;
}

/** A kept log as the engine takes it. */
export function meterLogOf(log: KeptLog): MeterLog {
  const column = (values: readonly (number | null)[] | undefined) =>
    values === undefined ? null : Float64Array.from(log.atMinutes, (_, k) => values[k] ?? Number.NaN);
  return {
    timeMs: Float64Array.from(log.atMinutes, (minutes) => log.startMs + minutes * MINUTE_MS),
    usualMs: log.usualMs,
    stamp: log.stamp,
    chargeShare: column(log.chargeShare),
    bankV: column(log.bankV),
    bankA: column(log.bankA),
    bankW: column(log.bankW),
    pvW: column(log.pvW),
    loadW: column(log.loadW),
    loadA: null,
    usedAh: null,
    zone: log.zone,
  };
}
