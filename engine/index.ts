/** duskline's engine: a scenario goes in, traces and odds come out. No DOM, no Node, no clock, no chance of its own. */
export { type ClimateTables, loadClimateTables, readWeatherFile, type WeatherFile } from "./place/index.ts";
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
} from "./scenario/index.ts";
