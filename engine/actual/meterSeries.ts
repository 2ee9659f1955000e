import type { Prepared } from "../run/prepare.ts";
import {
  BANK_A,
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
} from "../run/runRows.ts";
import { STORED_AH } from "../run/stepState.ts";
import type { LoggedSteps } from "./loggedSteps.ts";

/** What a meter says of a run, or said of the real thing: one value per step (charge one more), NaN where it says nothing. */
export interface MeterSeries {
  readonly chargeShare: Float64Array | null;
  readonly bankV: Float64Array | null;
  readonly bankA: Float64Array | null;
  readonly pvW: Float64Array | null;
  /** Measured, or what panels and bank leave for it. */
  readonly loadW: Float64Array | null;
}

/**
 * How far a meter's figures may be off: share of the reading, the same for a whole log, and zero error. Common practice, no source: class 1
 * shunts and current clamps for direct current; displays of charge in whole or half percent.
 */
export const METER_GAIN_SHARE = 0.01;
export const METER_ZERO_A = 0.03;
export const METER_CHARGE_SHARE = 0.005;

/**
 * What a log says in the terms of a run. Load that the log does not have is what panels and bank leave for it, where no other source may run
 * and, without panel watts, by night only.
 */
export function seriesOfLog(prepared: Prepared, logged: LoggedSteps): MeterSeries {
  const { chargeShare, bankV, bankA, bankW, pvW } = logged;
  return { chargeShare, bankV, bankA, pvW, loadW: logged.loadW ?? derivedLoadW(prepared, pvW, bankW) };
}

function derivedLoadW(prepared: Prepared, pvW: Float64Array | null, bankW: Float64Array | null): Float64Array | null {
  if (bankW === null) return null;
  const mayCharge = sourceMayRun(prepared);
  return bankW.map((watts, i) => {
    if (mayCharge[i]! > 0) return Number.NaN;
    const sunW = prepared.clear.ghiWm2[i]! > 0 ? (pvW?.[i] ?? Number.NaN) : 0;
    return Math.max(0, sunW - watts - prepared.controllersW);
  });
}

/** 1 where mains, a vehicle or a generator may give power, else 0. */
function sourceMayRun(prepared: Prepared): Uint8Array {
  const may = new Uint8Array(prepared.grid.steps);
  for (const source of prepared.sources) {
    for (let i = 0; i < may.length; i++) if (source.availableShare[i]! > 0) may[i] = 1;
  }
  return may;
}

/** Errors of one meter, as shares of a reading, A and share of charge. */
export interface MeterErrors {
  readonly pvGain: number;
  readonly bankGain: number;
  readonly loadGain: number;
  readonly zeroA: number;
  /** How far the meter's rows lie off the steps, in steps, −1…1: late when positive. */
  readonly lateSteps: number;
  /** Draws the scatter of one reading of charge. */
  readonly chargeScatter: () => number;
}

/** What a meter with these errors would say of a run in the steps, and of the quantities, that `logged` has. */
export function seriesOfRun(prepared: Prepared, run: RunRows, logged: LoggedSteps, errors: MeterErrors): MeterSeries {
  const { rows, bankRows } = run;
  const { steps } = prepared.grid;
  const late = Math.abs(errors.lateSteps);
  const towards = errors.lateSteps > 0 ? 1 : -1;
  const seen = (mask: Float64Array | null, valueAt: (step: number) => number) =>
    mask === null
      ? null
      : Float64Array.from({ length: steps }, (_, i) => {
          if (!Number.isFinite(mask[i]!)) return Number.NaN;
          const beside = Math.max(0, Math.min(steps - 1, i + towards));
          return (1 - late) * valueAt(i) + late * valueAt(beside);
        });
  const at = (i: number, slot: number) => rows[i * ROW_SLOTS + slot]!;
  const ofBank = (i: number, slot: number) => bankRows[i * BANK_SLOTS + slot]!;
  const pvW = seen(logged.pvW, (i) => (at(i, ROW_SOLAR_W) - at(i, ROW_SPILLED_W)) * errors.pvGain);
  const amperes = (i: number) => ofBank(i, BANK_A) * errors.bankGain + errors.zeroA;
  const bankW = seen(logged.bankW, (i) => ofBank(i, BANK_W) * errors.bankGain + errors.zeroA * ofBank(i, BANK_V));
  const charge = logged.chargeShare;
  const storedAh = (i: number) => (i < steps ? rows[i * ROW_SLOTS + ROW_STORED_AH]! : run.state[STORED_AH]!);
  return {
    chargeShare:
      charge === null
        ? null
        : charge.map((share, i) =>
            Number.isFinite(share) ? storedAh(i) / prepared.bank.fullAh + errors.chargeScatter() : Number.NaN,
          ),
    bankV: seen(logged.bankV, (i) => ofBank(i, BANK_V)),
    bankA: seen(logged.bankA, amperes),
    pvW,
    loadW:
      seen(
        logged.loadW,
        (i) => (at(i, ROW_DEMAND_W) - at(i, ROW_UNSERVED_W) - prepared.controllersW) * errors.loadGain,
      ) ?? derivedLoadW(prepared, pvW, bankW),
  };
}
