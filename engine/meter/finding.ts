import type { MeterFinding } from "./meterLog.ts";
import type { MeterMapping } from "./meterMapping.ts";

/** @param rows rows concerned; @param line of the file where it first happens; @param proposal what to set in the mapping if it is right */
export function finding(
  code: string,
  message: string,
  rows = 0,
  line: number | null = null,
  proposal: MeterMapping | null = null,
): MeterFinding {
  return { code, message, rows, line, proposal };
}
