/**
 * run: members, from the first hour to the last. Scenario ─► prepare (grid, sky, shade, loads, bank as arrays) ─► stepRun (every
 * step: offer, take, count) ─► trace (every quantity, days, verdict), ledger and explain; or ─► prepareEnsemble ─► runMembers (a sky, operators
 * and figures for each) ─► oddsReport. Reads every other folder; read by none.
 */
export { type DayFigures, dayFigures } from "./dayFigures.ts";
export { type ExplainedNumber, type ExplainedPart, explain } from "./explain.ts";
export { type HarvestLine, type Ledger, type LedgerLine, ledger } from "./ledger.ts";
export { dayWords, type LocalMoment, localMoment } from "./localClock.ts";
export { makeMemberRoom } from "./makeMemberRoom.ts";
export { type Bands, type OddsReport, oddsReport, replayMember, runMembers, type Spread } from "./odds.ts";
export { mergeOdds, type OddsPart } from "./oddsPart.ts";
export { oddsPartJson, readOddsPart } from "./oddsPartJson.ts";
export { type Prepared, prepare } from "./prepare.ts";
export { type PreparedEnsemble, prepareEnsemble } from "./prepareEnsemble.ts";
export type { RunRecord } from "./runRecord.ts";
export { makeRunRows, type RunRows } from "./runRows.ts";
export { stepRun } from "./stepRun.ts";
export type { Surroundings } from "./surroundings.ts";
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
