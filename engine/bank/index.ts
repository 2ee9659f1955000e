/**
 * bank: what the battery does with a current. Bank ─► prepareBank (chemistry filled in, curves as tables, temperature limits on
 * the step grid) ─► bankVoltage (volts, currents, stored energy) inside the step loop. Charge is counted in ampere-hours;
 * voltage is an output. Reads scenario; read by run.
 */

export { currentForVolts } from "./acceptance.ts";
export { chargingOhmAt, coldestOhm, internalOhmAt, internalOhmFull } from "./bankOhm.ts";
export { acceptA, chargeA, chargingV, drawA, openCircuitV, peukertFactorAt, storedWh } from "./bankVoltage.ts";
export { CHEMISTRY_DATA } from "./chemistryData.ts";
export { type CurvePoint, onCurve } from "./curve.ts";
export { handbookAh } from "./handbookAh.ts";
export { chargingPathV, drawingPathV } from "./pathV.ts";
export { CURVE_STEPS, type PreparedBank, prepareBank } from "./prepareBank.ts";
