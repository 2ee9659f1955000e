/**
 * meter: what a battery meter or a solar controller wrote. Text ─► meterTable (separator, decimal mark, titles) ─► suggestColumns,
 * timeFormOf (what the mapping leaves open) ─► readMeterLog: a log in our units and signs with findings in words, or what has to be asked.
 * Reads scenario's problems only; knows no place: what the sun says of the log's clock is `actual`'s.
 */
export type { MeterFinding, MeterLog } from "./meterLog.ts";
export { METER_QUANTITIES, MeterMapping, readMeterMapping } from "./meterMapping.ts";
export { meterTable } from "./meterTable.ts";
export { isUnit } from "./meterUnits.ts";
export { readMeterLog } from "./readMeterLog.ts";
export { span } from "./span.ts";
