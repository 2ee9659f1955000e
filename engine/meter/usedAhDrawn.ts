import { finding } from "./finding.ts";
import type { MeterFinding } from "./meterLog.ts";

/** Ampere-hours drawn since the bank was full, 0 or more, however the meter writes them. @param usedAh as written, NaN where there is none */
export function usedAhDrawn(usedAh: Float64Array): {
  readonly usedAh: Float64Array;
  readonly findings: readonly MeterFinding[];
} {
  const sumAh = usedAh.reduce((total, ah) => total + (Number.isFinite(ah) ? ah : 0), 0);
  const isBelow = sumAh < 0;
  const message = "Ampere-hours drawn are written below 0; they are read as drawn all the same.";
  return {
    usedAh: usedAh.map((ah) => Math.max(0, isBelow ? -ah : ah)),
    findings: isBelow ? [finding("used-negative", message, usedAh.length)] : [],
  };
}
