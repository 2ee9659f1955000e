/**
 * run: one member of a scenario, from the first hour to the last. Scenario ─► prepare (grid, sky, shade, loads, bank as arrays) ─► stepRun
 * (every step: offer, take, count) ─► trace (every quantity, days, verdict), ledger and explain. Reads every folder of physics.
 */
export { assumedRemarks } from "./assumedRemarks.ts";
export type { DayFigures } from "./dayFigures.ts";
export { type ExplainedPart, explain } from "./explain.ts";
export { type HarvestLine, type Ledger, type LedgerLine, ledger } from "./ledger.ts";
export { dayWords, type LocalMoment, localMoment } from "./localClock.ts";
export {
  CANOPY_REACH,
  crownLean,
  drawFigures,
  FIGURE_CANOPY_NORMAL,
  FIGURE_CAPACITY_SHARE,
  FIGURE_IDLE_SHARE,
  FIGURE_START_SHARE,
  FIGURE_YIELD_SHARE,
  FIGURES,
  figureSpread,
  SURENESS_SPREAD,
} from "./memberFigures.ts";
export { INPUT_MAX_CHARGE_A, type MemberInputs, memberInputs, ownInputs } from "./memberInputs.ts";
export { type CrownFactors, darkShare, type Prepared, prepare, preparedOf, skyParts } from "./prepare.ts";
export { turbidityOf } from "./prepareSky.ts";
export { requireFedLoads, requireFedSky } from "./requireFed.ts";
export { identityOf, makeReuse, prepareEachTime, type Reuse } from "./reuse.ts";
export { makeRunDetails, type RunDetails } from "./runDetails.ts";
export {
  BANK_A,
  BANK_CONNECTED,
  BANK_SLOTS,
  BANK_V,
  BANK_W,
  makeRunRows,
  ROW_DEMAND_W,
  ROW_SLOTS,
  ROW_SOLAR_W,
  ROW_SPILLED_W,
  ROW_STORED_AH,
  ROW_UNSERVED_W,
  type RunRows,
} from "./runRows.ts";
export { isMeanTyped, statedClearness } from "./statedClearness.ts";
export { stepBank } from "./stepBank.ts";
export {
  stepLaneFigures,
  stepLaneLight,
  stepLanes,
  stepLaneWanted,
  stepPanels,
  stepPower,
  stepRun,
} from "./stepRun.ts";
export { CONNECTED, DROPOUT_H, LAST_A, STATE_SLOTS, STORED_AH } from "./stepState.ts";
export type { Surroundings } from "./surroundings.ts";
export { type Trace, trace, traceOf, tracePrepared } from "./trace.ts";
export type { Verdict } from "./verdict.ts";
export { type VoltsLost, voltsCause, voltsLostWords } from "./voltsLost.ts";
