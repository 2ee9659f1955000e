import { CURVE_STEPS, type PreparedBank } from "./prepareBank.ts";

/** Resistance that a load meets at a charge, Ah, in step `i`, Ω; as `stepBank` reads it. */
export function internalOhmAt(bank: PreparedBank, storedAh: number, i: number): number {
  return bank.fixedOhm + bank.internalCellOhm[placeOf(bank, storedAh)]! * bank.internalCold[i]!;
}

/** Apparent resistance to a steady charging current at a charge, Ah, in step `i`, Ω; as `stepBank` reads it. */
export function chargingOhmAt(bank: PreparedBank, storedAh: number, i: number): number {
  return bank.fixedOhm + bank.chargingCellOhm[placeOf(bank, storedAh)]! * bank.chargingCold[i]!;
}

/** The resistance that a load meets at a charge, Ah, in the coldest step, Ω. */
export function coldestOhm(bank: PreparedBank, storedAh: number): number {
  const cold = bank.internalCold.reduce((most, each) => Math.max(most, each), 0);
  return bank.fixedOhm + bank.internalCellOhm[placeOf(bank, storedAh)]! * cold;
}

/** The resistance that a load meets in the full bank at 25 °C, Ω. */
export function internalOhmFull(bank: PreparedBank): number {
  return bank.fixedOhm + bank.internalCellOhm[CURVE_STEPS]!;
}

function placeOf(bank: PreparedBank, storedAh: number): number {
  return Math.min(CURVE_STEPS - 1, Math.max(0, Math.floor(storedAh * bank.curveStepsPerAh)));
}
