import type { MeterMapping } from "./meterMapping.ts";

/**
 * What a meter wrote, in order of time. Every array has one value per row, NaN where the row has none; null where the log has
 * no such column. Signs are ours: current and power into the bank are positive.
 */
export interface MeterLog {
  /** Instants, milliseconds since 1970 UTC, rising. */
  readonly timeMs: Float64Array;
  /** From one row to the next, as it mostly is, ms. */
  readonly usualMs: number;
  readonly stamp: "instant" | "start" | "end";
  /** State of charge, 0…1. */
  readonly chargeShare: Float64Array | null;
  readonly bankV: Float64Array | null;
  readonly bankA: Float64Array | null;
  readonly bankW: Float64Array | null;
  readonly pvW: Float64Array | null;
  readonly loadW: Float64Array | null;
  readonly loadA: Float64Array | null;
  /** Ampere-hours drawn since the bank was full, 0 or more. */
  readonly usedAh: Float64Array | null;
  /** The zone whose clock the log keeps, as read. */
  readonly zone: string;
}

/** Something a person should know of how a log was read, and what could be done about it. Nothing of it is done unasked. */
export interface MeterFinding {
  readonly code: string;
  readonly message: string;
  /** Rows concerned. */
  readonly rows: number;
  /** Line of the file where it first happens, 1 for the first; null where it is about the whole. */
  readonly line: number | null;
  /** What to set in the mapping if the finding is right. */
  readonly proposal: MeterMapping | null;
}
