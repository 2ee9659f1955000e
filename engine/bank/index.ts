/**
 * bank: what the battery does with a current. Bank ─► prepareBank (chemistry filled in, curves as tables, temperature limits on
 * the step grid) ─► bankVoltage (volts, currents, stored energy) inside the step loop. Charge is counted in ampere-hours;
 * voltage is an output. Reads scenario; read by run.
 */

export { chargingOhmAt, internalOhmAt } from "./bankOhm.ts";
export { chargeA, drawA, openCircuitV, peukertFactorAt, storedWh } from "./bankVoltage.ts";
export { CHEMISTRY_DATA, type ChemistryData } from "./chemistryData.ts";
export { type HandbookSizing, handbookAh } from "./handbookAh.ts";
export { type PreparedBank, prepareBank } from "./prepareBank.ts";
