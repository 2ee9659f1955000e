/** duskline's engine: a scenario goes in, traces and odds come out. No DOM, no Node, no clock, no chance of its own. */
export * from "./actual/index.ts";

export * from "./checks/index.ts";
export * from "./drivers/index.ts";
export * from "./ensemble/index.ts";
export * from "./gear/index.ts";
export * from "./learn/index.ts";
export {
  METER_QUANTITIES,
  type MeterFinding,
  type MeterLog,
  type MeterMapping,
  type MeterQuantity,
  type MeterReading,
  readMeterLog,
  readMeterMapping,
} from "./meter/index.ts";
export * from "./odds/index.ts";
export {
  type ClimateTables,
  loadClimateNear,
  loadClimateTables,
  readWeatherFile,
  type WeatherFile,
} from "./place/index.ts";
export * from "./pool/index.ts";
export * from "./run/index.ts";
export {
  applyChanges,
  type Change,
  type Difference,
  differenceInWords,
  differences,
  type Problem,
  type ReadResult,
  readScenario,
  readVariant,
  Scenario,
  type ScenarioInput,
  type TimeGrid,
  zoneOf,
} from "./scenario/index.ts";
export * from "./size/index.ts";
export * from "./task/index.ts";
export * from "./versus/index.ts";
