import type { Problem } from "../scenario/problem.ts";
import type { MeterFinding, MeterLog } from "./meterLog.ts";
import type { MeterMapping } from "./meterMapping.ts";

/** A log that was read, with the complete mapping it was read with; or what is wrong or undecided, and what could be found. */
export type MeterReading =
  | { ok: true; log: MeterLog; mapping: MeterMapping; findings: readonly MeterFinding[] }
  | { ok: false; problems: readonly Problem[]; suggestion: MeterMapping };
