import type { Prepared } from "./prepare.ts";
import {
  BANK_A,
  BANK_CONNECTED,
  BANK_SLOTS,
  BANK_V,
  BANK_W,
  ROW_DEMAND_W,
  ROW_SLOTS,
  ROW_SOLAR_W,
  ROW_SPILLED_W,
  ROW_STORED_AH,
  ROW_UNSERVED_W,
  type RunRows,
} from "./runRows.ts";
import { STORED_AH } from "./stepState.ts";

/**
 * What happened to a member, one array per quantity. Powers are means over the step at the bank's terminals, W. Arrays named
 * per group, source or station hold `steps` values for the first, then for the second, and so on.
 */
export interface RunRecord {
  /** Charge at each step's start, and one more for the end, Ah. */
  readonly storedAh: Float64Array;
  /** What the controllers offer, whether it can be used or not. */
  readonly solarW: Float64Array;
  readonly groupW: Float64Array;
  /** Solar power that nobody could take, or that the selector shut out. */
  readonly spilledW: Float64Array;
  /** Power taken from each source. */
  readonly sourceW: Float64Array;
  /** Fuel burnt in the step by each source, L. */
  readonly fuelL: Float64Array;
  /** What loads, converter and controllers want, and what of it they got. */
  readonly demandW: Float64Array;
  readonly servedW: Float64Array;
  readonly unservedW: Float64Array;
  /** Into the bank's terminals when positive, out of them when negative. */
  readonly bankW: Float64Array;
  readonly bankA: Float64Array;
  readonly bankV: Float64Array;
  /** 1 while the low-voltage disconnect is closed, else 0. */
  readonly connected: Float64Array;
  /** Volts at each radio on the worst transmit peak; 0 while it is unstaffed or cut off. */
  readonly radioV: Float64Array;
}

/** Sorts the rows of a finished run by quantity: those of a member by itself. */
export function runRecord(prepared: Prepared, run: RunRows): RunRecord {
  const { steps } = prepared.grid;
  const { rows, bankRows, parts, partStride } = run;
  const column = (at: number) => Float64Array.from({ length: steps }, (_, i) => rows[i * ROW_SLOTS + at]!);
  const ofBank = (at: number) => Float64Array.from({ length: steps }, (_, i) => bankRows[i * BANK_SLOTS + at]!);
  const columns = (first: number, count: number) =>
    Float64Array.from(
      { length: steps * count },
      (_, k) => parts[(k % steps) * partStride + first + Math.floor(k / steps)]!,
    );
  const demandW = column(ROW_DEMAND_W);
  const unservedW = column(ROW_UNSERVED_W);
  return {
    storedAh: Float64Array.from({ length: steps + 1 }, (_, i) =>
      i < steps ? rows[i * ROW_SLOTS + ROW_STORED_AH]! : run.state[STORED_AH]!,
    ),
    solarW: column(ROW_SOLAR_W),
    groupW: columns(0, prepared.groups.length),
    spilledW: column(ROW_SPILLED_W),
    sourceW: columns(run.sourceAt, prepared.sources.length),
    fuelL: columns(run.fuelAt, prepared.sources.length),
    demandW,
    servedW: demandW.map((watts, i) => watts - unservedW[i]!),
    unservedW,
    bankW: ofBank(BANK_W),
    bankA: ofBank(BANK_A),
    bankV: ofBank(BANK_V),
    connected: ofBank(BANK_CONNECTED),
    radioV: columns(run.stationAt, prepared.loads.stations.length),
  };
}
