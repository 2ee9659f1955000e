import { CURVE_STEPS, type PreparedBank } from "./prepareBank.ts";

/** Open-circuit volts at a charge, Ah. */
export function openCircuitV(bank: PreparedBank, storedAh: number): number {
  const at = storedAh * bank.curveStepsPerAh;
  const k = Math.min(CURVE_STEPS - 1, Math.max(0, Math.floor(at)));
  const low = bank.openCircuitV[k]!;
  return low + (bank.openCircuitV[k + 1]! - low) * (at - k);
}

/** Most charging current over a step that starts at a charge, Ah, if the charger could give any. */
export function acceptA(bank: PreparedBank, storedAh: number): number {
  const at = storedAh * bank.curveStepsPerAh;
  const k = Math.min(CURVE_STEPS - 1, Math.max(0, Math.floor(at)));
  const low = bank.acceptA[k]!;
  return low + (bank.acceptA[k + 1]! - low) * (at - k);
}

/** Watt-hours stored at a charge, Ah: what a lossless discharge to empty would give. */
export function storedWh(bank: PreparedBank, storedAh: number): number {
  const at = storedAh * bank.curveStepsPerAh;
  const k = Math.min(CURVE_STEPS - 1, Math.max(0, Math.floor(at)));
  const low = bank.openCircuitV[k]!;
  const part = at - k;
  const ahPerStep = bank.fullAh / CURVE_STEPS;
  return bank.storedWhAt[k]! + ahPerStep * part * (low + ((bank.openCircuitV[k + 1]! - low) * part) / 2);
}

/**
 * Current that gives `powerW` at the terminals while discharging: the smaller root of P = (E − R·I)·I. Where the bank
 * cannot give that much at any current, the current of its greatest power E/2R.
 */
export function drawA(openV: number, ohm: number, powerW: number): number {
  const under = openV * openV - 4 * ohm * powerW;
  return under <= 0 ? openV / (2 * ohm) : (2 * powerW) / (openV + Math.sqrt(under));
}

/** Current that takes `powerW` at the terminals while charging: the root of P = (E + R·I)·I. */
export function chargeA(openV: number, ohm: number, powerW: number): number {
  return (2 * powerW) / (openV + Math.sqrt(openV * openV + 4 * ohm * powerW));
}

/** Current that takes `powerW` at the terminals while charging, polarisation counted; `stepBank` does the same where it stands. @memberLoop */
export function chargingA(
  openV: number,
  ohm: number,
  polarisationV: number,
  polarisationA: number,
  powerW: number,
): number {
  return powerW < polarisationA * (openV + polarisationV + ohm * polarisationA)
    ? chargeA(openV, ohm + polarisationV / polarisationA, powerW)
    : chargeA(openV + polarisationV, ohm, powerW);
}

/** Volts that a charging current adds to those at rest, V; `chargeA` takes them apart again. @memberLoop */
export function chargingV(currentA: number, ohm: number, polarisationV: number, polarisationA: number): number {
  const part = currentA < polarisationA ? currentA / polarisationA : 1;
  return ohm * currentA + polarisationV * part;
}

/** Ampere-hours that leave the bank for each ampere-hour drawn at `currentA` (Peukert; 1 for lithium). */
export function peukertFactorAt(bank: PreparedBank, currentA: number): number {
  const at = currentA * bank.peukertStepsPerA;
  const last = bank.peukertFactor.length - 1;
  if (at >= last) return bank.peukertFactor[last]!;
  const k = Math.floor(at);
  const low = bank.peukertFactor[k]!;
  return low + (bank.peukertFactor[k + 1]! - low) * (at - k);
}
