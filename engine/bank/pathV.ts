import { chargingA, drawA, openCircuitV, peukertFactorAt, storedWh } from "./bankVoltage.ts";
import { CURVE_STEPS, type PreparedBank } from "./prepareBank.ts";

/**
 * Open-circuit volts over a whole step, for curves that somebody typed in. The volts halfway stand for the step where a curve bends as cells'
 * curves do; one with a jump in it gave back up to a sixth more than was put in. Here the volts are the mean over the charge that is moved, so
 * that what is stored and given back is the area under the curve.
 */

/** Halvings of the span between the lowest and the highest volts: what is left is far below a millivolt. */
const HALVINGS = 30;

/** Mean of the open-circuit volts from one charge to another, Ah. */
function meanOpenV(bank: PreparedBank, fromAh: number, toAh: number): number {
  const low = Math.min(fromAh, toAh);
  const high = Math.max(fromAh, toAh);
  // Within two neighbouring places of the table the difference of two stored energies would be mostly rounding.
  if ((high - low) * bank.curveStepsPerAh < 1 / CURVE_STEPS) return openCircuitV(bank, 0.5 * (low + high));
  return (storedWh(bank, high) - storedWh(bank, low)) / (high - low);
}

/**
 * Mean open-circuit volts while charging: never lower than those of the charge that such a current stores.
 * @param powerW at the terminals, 0 or more; @param hours of the step, for a bank of planned capacity
 * @param ohm,polarisationV at this charge and in this cold
 * @memberLoop
 */
export function chargingPathV(
  bank: PreparedBank,
  storedAh: number,
  powerW: number,
  hours: number,
  ohm: number,
  polarisationV: number,
): number {
  let low = openCircuitV(bank, storedAh);
  let high = openCircuitV(bank, bank.fullAh);
  for (let k = 0; k < HALVINGS; k++) {
    const volts = 0.5 * (low + high);
    const inAh = chargingA(volts, ohm, polarisationV, bank.polarisationA, powerW) * bank.coulombicShare * hours;
    if (meanOpenV(bank, storedAh, Math.min(bank.fullAh, storedAh + inAh)) > volts) low = volts;
    else high = volts;
  }
  return high;
}

/**
 * Mean open-circuit volts while giving: never higher than those of the charge that such a current takes.
 * @param powerW at the terminals, 0 or more; @param reachableAh what the cold leaves within reach
 * @param maxDischargeA,ohm at this charge and in this cold
 * @memberLoop
 */
export function drawingPathV(
  bank: PreparedBank,
  storedAh: number,
  powerW: number,
  reachableAh: number,
  hours: number,
  maxDischargeA: number,
  ohm: number,
): number {
  let low = openCircuitV(bank, storedAh - reachableAh);
  let high = openCircuitV(bank, storedAh);
  for (let k = 0; k < HALVINGS; k++) {
    const volts = 0.5 * (low + high);
    const outA = Math.min(maxDischargeA, drawA(volts, ohm, powerW));
    const factor = bank.hasPeukert ? peukertFactorAt(bank, outA) : 1;
    const outAh = Math.min(reachableAh, outA * factor * hours);
    if (meanOpenV(bank, storedAh - outAh, storedAh) >= volts) low = volts;
    else high = volts;
  }
  return low;
}
