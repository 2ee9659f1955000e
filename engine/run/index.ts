/**
 * run: one member of a scenario, from the first hour to the last. Scenario ─► prepare (grid, sky, shade, loads, bank as arrays) ─► stepRun
 * (every step: offer, take, count) ─► trace (every quantity, days, verdict), ledger and explain. Reads every folder of physics.
 */
export { type DayFigures, dayFigures } from "./dayFigures.ts";
export { type ExplainedNumber, type ExplainedPart, explain } from "./explain.ts";
export { type HarvestLine, type Ledger, type LedgerLine, ledger } from "./ledger.ts";
export { dayWords, type LocalMoment, localMoment } from "./localClock.ts";
export { type Prepared, prepare } from "./prepare.ts";
export type { RunRecord } from "./runRecord.ts";
export { makeRunRows, type RunRows } from "./runRows.ts";
export { stepRun } from "./stepRun.ts";
export type { Surroundings } from "./surroundings.ts";
export { type Trace, trace, tracePrepared } from "./trace.ts";
export type { RadioVerdict, Verdict } from "./verdict.ts";
