/**
 * run: members, from the first hour to the last. Scenario ─► prepare (grid, sky, shade, loads, bank as arrays) ─► stepRun (every
 * step: offer, take, count) ─► trace (every quantity, days, verdict), ledger and explain; or ─► prepareEnsemble ─► runMembers (a sky, operators
 * and figures for each, four side by side, on workers through taskPool) ─► oddsReport. Reads every other folder; read by none.
 */
export { type DayFigures, dayFigures } from "./dayFigures.ts";
export { DRIVERS_FEWEST_MEMBERS, DRIVERS_MOST_MEMBERS, drivers } from "./drivers.ts";
export type { DriverFactor } from "./driversMember.ts";
export type { DriverLine, DriversReport, EndEffect, SheddingLine } from "./driversReport.ts";
export type { DriverShare, Sampled } from "./driversShares.ts";
export { type ExplainedNumber, type ExplainedPart, explain } from "./explain.ts";
export { type HarvestLine, type Ledger, type LedgerLine, ledger } from "./ledger.ts";
export { dayWords, type LocalMoment, localMoment } from "./localClock.ts";
export { makeMemberRoom } from "./makeMemberRoom.ts";
export { type Bands, type OddsReport, oddsReport, replayMember, runMembers, type Spread } from "./odds.ts";
export { mergeOdds, type OddsPart } from "./oddsPart.ts";
export { oddsPartJson, readOddsPart } from "./oddsPartJson.ts";
export { type PairedCharge, pairedCharge } from "./pairedCharge.ts";
export { type Prepared, prepare } from "./prepare.ts";
export { type PreparedEnsemble, prepareEnsemble } from "./prepareEnsemble.ts";
export type { RunRecord } from "./runRecord.ts";
export { makeRunRows, type RunRows } from "./runRows.ts";
export { readSizeWish, type SizeAxis, type SizeWish, usualWishes } from "./sizeAxis.ts";
export { sizeFixedWords } from "./sizeFixedWords.ts";
export type { SizeHandbook } from "./sizeHandbook.ts";
export { prepareSizes, type SizeMap } from "./sizeMap.ts";
export { mergeSizes, type SizePart, sizeMembers } from "./sizeMembers.ts";
export { type SizeReport, sizeReport } from "./sizeReport.ts";
export { inHundred, type SizeOption, sizeCellWords, sizeOptions, sizeWords } from "./sizeSentences.ts";
export { isSize, type SizeAims, type SizeOutcome, type SizeRow } from "./sizeTally.ts";
export { stepRun } from "./stepRun.ts";
export type { Surroundings } from "./surroundings.ts";
export { serveTasks } from "./task.ts";
export type { OddsTask, SizesTask, TaskOrder, TaskReply } from "./taskOrder.ts";
export {
  type CancelSignal,
  type ConnectWorker,
  makeTaskPool,
  type OddsRun,
  TaskCancelled,
  type TaskOptions,
  type TaskPool,
  type TaskRun,
} from "./taskPool.ts";
export { makeTaskStore, type TaskStore } from "./taskStore.ts";
export { type Trace, trace, tracePrepared } from "./trace.ts";
export type { RadioVerdict, Verdict } from "./verdict.ts";
export {
  type Burden,
  burdenOf,
  type Comparison,
  type Contender,
  type PairedDifference,
  type VersusReport,
  versus,
} from "./versus.ts";
export { type Odds, wilson } from "./wilson.ts";
