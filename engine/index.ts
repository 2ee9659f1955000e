/**
 * duskline's engine, as others may build on it: a scenario goes in, traces and odds come out. No DOM, no Node, no clock, no chance of its own.
 * docs/library.md shows it at work. What is not named here may change from one version to the next.
 */
export type { LimitOptions } from "./checks/limitContext.ts";
export type { LimitsReport } from "./checks/limits.ts";
export type { DriversReport } from "./drivers/driversReport.ts";
export { EngineFault } from "./fault.ts";
export { type ActualReport, actual } from "./library/actual.ts";
export type { Answer } from "./library/answer.ts";
export type { AskOptions } from "./library/askOptions.ts";
export { drivers } from "./library/drivers.ts";
export { type LearnedReport, learn } from "./library/learn.ts";
export { limits } from "./library/limits.ts";
export { odds } from "./library/odds.ts";
export { type SizeOptions, size } from "./library/size.ts";
export { trace } from "./library/trace.ts";
export { versus } from "./library/versus.ts";
export type { OddsReport } from "./odds/odds.ts";
export { loadClimateTables } from "./place/loadClimateTables.ts";
export { readWeatherFile } from "./place/readWeatherFile.ts";
export { explain } from "./run/explain.ts";
export { ledger } from "./run/ledger.ts";
export type { Surroundings } from "./run/surroundings.ts";
export type { Trace } from "./run/trace.ts";
export { applyChanges } from "./scenario/applyChanges.ts";
export type { Change } from "./scenario/change.ts";
export type { Problem } from "./scenario/problem.ts";
export { readScenario, readVariant } from "./scenario/readScenario.ts";
export type { Scenario, ScenarioInput } from "./scenario/scenario.ts";
export type { SizeReport } from "./size/sizeReport.ts";
export { TaskCancelled, type TaskPool } from "./task/taskRun.ts";
export type { VersusReport } from "./versus/versus.ts";
