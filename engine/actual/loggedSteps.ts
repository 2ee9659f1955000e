import type { MeterLog } from "../meter/meterLog.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";

/** What a meter said, on the steps of a plan: means over each step, NaN where less than half of it was logged. */
export interface LoggedSteps {
  readonly bankV: Float64Array | null;
  readonly bankA: Float64Array | null;
  readonly bankW: Float64Array | null;
  readonly pvW: Float64Array | null;
  readonly loadW: Float64Array | null;
  /** Charge at the start of each step and at the end, 0…1; NaN where no row is near. */
  readonly chargeShare: Float64Array | null;
  /** Share of each step that the log covers, 0…1. */
  readonly coverageShare: Float64Array;
}

/** A row stands for no more than so many usual intervals; beyond them is a gap. */
export const ROW_REACH = 1.5;
/** Charge is taken straight between two rows that are no farther apart than so many usual intervals, or 20 minutes. */
const CHARGE_REACH = 3;
const CHARGE_REACH_MS = 1_200_000;
const LEAST_COVERAGE = 0.5;

/** Lays a log on a plan's grid. Bank power and load power are worked out from amperes and volts where the log has no watts. */
export function loggedSteps(log: MeterLog, grid: TimeGrid): LoggedSteps {
  const spans = rowSpans(log);
  const mean = (values: Float64Array | null) => (values === null ? null : stepMeans(values, spans, grid).mean);
  const product = (first: Float64Array | null, second: Float64Array | null) =>
    first === null || second === null ? null : first.map((value, k) => value * second[k]!);
  const everyRow = new Float64Array(log.timeMs.length).fill(1);
  return {
    bankV: mean(log.bankV),
    bankA: mean(
      log.bankA ?? (log.bankW === null || log.bankV === null ? null : log.bankW.map((w, k) => w / log.bankV![k]!)),
    ),
    bankW: mean(log.bankW ?? product(log.bankA, log.bankV)),
    pvW: mean(log.pvW),
    loadW: mean(log.loadW ?? product(log.loadA, log.bankV)),
    chargeShare: log.chargeShare === null ? null : atEdges(log.timeMs, log.chargeShare, log.usualMs, grid),
    coverageShare: stepMeans(everyRow, spans, grid).covered,
  };
}

interface RowSpans {
  readonly fromMs: Float64Array;
  readonly toMs: Float64Array;
}

/** The stretch of time that each row stands for. */
function rowSpans({ timeMs, usualMs, stamp }: MeterLog): RowSpans {
  const reachMs = ROW_REACH * usualMs;
  const rows = timeMs.length;
  const gapAfter = (k: number) => (k + 1 < rows ? Math.min(timeMs[k + 1]! - timeMs[k]!, reachMs) : usualMs);
  const gapBefore = (k: number) => (k > 0 ? Math.min(timeMs[k]! - timeMs[k - 1]!, reachMs) : usualMs);
  const before = stamp === "start" ? 0 : stamp === "end" ? 1 : 0.5;
  const after = 1 - before;
  return {
    fromMs: timeMs.map((ms, k) => ms - before * gapBefore(k)),
    toMs: timeMs.map((ms, k) => ms + after * gapAfter(k)),
  };
}

function stepMeans(values: Float64Array, { fromMs, toMs }: RowSpans, grid: TimeGrid) {
  const sum = new Float64Array(grid.steps);
  const covered = new Float64Array(grid.steps);
  for (let k = 0; k < values.length; k++) {
    const value = values[k]!;
    if (!Number.isFinite(value)) continue;
    const first = Math.max(0, Math.floor((fromMs[k]! - grid.startMs) / grid.stepMs));
    for (let i = first; i < grid.steps; i++) {
      const stepFromMs = grid.startMs + i * grid.stepMs;
      if (stepFromMs >= toMs[k]!) break;
      const share = (Math.min(toMs[k]!, stepFromMs + grid.stepMs) - Math.max(fromMs[k]!, stepFromMs)) / grid.stepMs;
      if (share <= 0) continue;
      sum[i]! += share * value;
      covered[i]! += share;
    }
  }
  const mean = sum.map((total, i) => (covered[i]! >= LEAST_COVERAGE ? total / covered[i]! : Number.NaN));
  return { mean, covered: covered.map((share) => Math.min(1, share)) };
}

/** A state at the edges of the steps, straight between the rows about each. */
function atEdges(timeMs: Float64Array, values: Float64Array, usualMs: number, grid: TimeGrid): Float64Array {
  const reachMs = Math.max(CHARGE_REACH_MS, CHARGE_REACH * usualMs);
  const edges = new Float64Array(grid.steps + 1).fill(Number.NaN);
  let before = -1;
  let next = 0;
  for (let i = 0; i <= grid.steps; i++) {
    const ms = grid.startMs + i * grid.stepMs;
    for (; next < timeMs.length && timeMs[next]! <= ms; next++) if (Number.isFinite(values[next]!)) before = next;
    let after = next;
    while (after < timeMs.length && !Number.isFinite(values[after]!)) after++;
    const hasBefore = before >= 0 && ms - timeMs[before]! <= reachMs;
    const hasAfter = after < timeMs.length && timeMs[after]! - ms <= reachMs;
    if (hasBefore && hasAfter) {
      const share = (ms - timeMs[before]!) / (timeMs[after]! - timeMs[before]!);
      edges[i] = values[before]! + share * (values[after]! - values[before]!);
    } else if (hasBefore && ms - timeMs[before]! <= Math.max(usualMs, 60_000)) edges[i] = values[before]!;
    else if (hasAfter && timeMs[after]! - ms <= Math.max(usualMs, 60_000)) edges[i] = values[after]!;
  }
  return edges;
}
