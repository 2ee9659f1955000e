import { clipped } from "../scenario/shown.ts";
import { finding } from "./finding.ts";
import { flowSign } from "./flowSign.ts";
import { gapFindings, usualInterval } from "./gapFindings.ts";
import type { MeterFinding } from "./meterLog.ts";
import type { MeterMapping, MeterQuantity } from "./meterMapping.ts";
import type { MeterReading } from "./meterReading.ts";
import type { MeterTally } from "./meterTally.ts";
import { rowFindings } from "./rowFindings.ts";
import { firstOfEachTime, rowsInOrder } from "./rowOrder.ts";
import { usedAhDrawn } from "./usedAhDrawn.ts";

/** Rows of a log as they stand in the file. */
export interface ReadRows {
  /** What the rows were read with. */
  readonly mapping: MeterMapping;
  readonly chargeUnit: "percent" | "share";
  readonly quantities: readonly MeterQuantity[];
  /** Instants, ms, and lines of the file, by row. */
  readonly times: readonly number[];
  readonly lines: readonly number[];
  /** By quantity, each with one value per row; NaN where there is none. */
  readonly values: readonly (readonly number[])[];
  /** What did not read. */
  readonly tally: MeterTally;
}

/** Puts rows in order and their signs right, and says what there is to say of them: order, times met twice, gaps, units, signs. */
export function orderedLog(read: ReadRows): MeterReading {
  const { mapping, chargeUnit, quantities, times, lines, values, tally } = read;
  const refuse = (code: string, path: readonly string[], message: string, suggestion: MeterMapping): MeterReading => ({
    ok: false,
    problems: [{ code, path: [...path], message }],
    suggestion,
  });
  const order = rowsInOrder(times, lines);
  const kept = firstOfEachTime(order.rows, times, lines, values);
  if (kept.rows.length < 2) {
    const message = "All rows of the log have the same time; check the mapping of time and its form.";
    return refuse("one-time", ["columns", "time"], message, mapping);
  }
  const timeMs = Float64Array.from(kept.rows, (k) => times[k]!);
  const usualMs = usualInterval(timeMs);
  const linesKept = kept.rows.map((k) => lines[k]!);
  const findings: MeterFinding[] = [
    ...rowFindings(tally, mapping, quantities, times.length),
    ...order.findings,
    ...kept.findings,
    ...gapFindings(timeMs, usualMs, linesKept),
  ];
  const column = (quantity: MeterQuantity): Float64Array | null => {
    const found = columnOf(read, kept.rows, quantity);
    findings.push(...found.findings);
    return found.cells;
  };
  const chargeShare = column("charge")?.map((percent) => Math.min(1, Math.max(0, percent / 100))) ?? null;
  const pvW = notBelowZero(column("pvW"));
  const bankV = column("bankV");
  const [writtenA, writtenW] = [column("bankA"), column("bankW")];
  const written = column("usedAh");
  const used = written === null ? null : usedAhDrawn(written);
  findings.push(...(used?.findings ?? []));
  const flow = writtenA ?? writtenW;
  const found = flow === null ? undefined : flowSign(mapping.currentSign, flow, { chargeShare, pvW, bankV });
  if (found === null) {
    const message =
      "Nothing in the log tells whether current into the bank is written above or below 0; set currentSign to chargingPositive or chargingNegative.";
    const suggestion: MeterMapping = { ...mapping, chargeUnit, currentSign: "chargingPositive" };
    return refuse("sign-unknown", ["currentSign"], message, suggestion);
  }
  findings.push(...(found?.findings ?? []));
  const sign = found?.sign ?? mapping.currentSign;
  const ours = (flows: Float64Array | null) =>
    sign === "chargingNegative" ? (flows?.map((value) => -value) ?? null) : flows;
  return {
    ok: true,
    log: {
      timeMs,
      usualMs,
      stamp: mapping.stamp!,
      chargeShare,
      bankV,
      bankA: ours(writtenA),
      bankW: ours(writtenW),
      pvW,
      loadW: notBelowZero(column("loadW")),
      loadA: notBelowZero(column("loadA")),
      usedAh: used?.usedAh ?? null,
      zone: mapping.zone!,
    },
    mapping: {
      ...mapping,
      ...(sign === undefined ? {} : { currentSign: sign }),
      ...(quantities.includes("charge") ? { chargeUnit } : {}),
    },
    findings,
  };
}

const notBelowZero = (cells: Float64Array | null) => cells?.map((value) => Math.max(0, value)) ?? null;

/** The cells of a quantity in the rows that are kept; null where the log has no such column, or no number in it. */
function columnOf(
  { mapping, quantities, values }: ReadRows,
  rows: readonly number[],
  quantity: MeterQuantity,
): { readonly cells: Float64Array | null; readonly findings: readonly MeterFinding[] } {
  const q = quantities.indexOf(quantity);
  if (q < 0) return { cells: null, findings: [] };
  const cells = Float64Array.from(rows, (k) => values[q]![k]!);
  if (cells.some(Number.isFinite)) return { cells, findings: [] };
  const title = clipped(mapping.columns![quantity]!);
  const message = `The column "${title}" (${quantity}) holds no number; it is passed over.`;
  return { cells: null, findings: [finding("empty-column", message, cells.length)] };
}
