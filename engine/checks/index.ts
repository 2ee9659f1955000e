/**
 * checks: what the plan asks of its wires. Run ─► limitContext (worst moments: peaks together, lowest charge, coldest and warmest air)
 * ─► loadBranches, chargeBranches, mainBranches (every conductor, its wire and fuse) ─► branchLines (each held against its limits; putRight: all
 * that must change) with radioLines, bankLines, mainFeedLines, panelLines, chargeLines ─► limits (every line with value, limit, rule, source,
 * margin and what to change; wiringRuns for the sheet; cautions beside them). Each is advice and never a permit. Reads every folder; read by none.
 */
export type { CableRun } from "./cableRuns.ts";
export { type Caution, cautionsFor, NO_PERMIT } from "./cautions.ts";
export { type LimitOptions, limitPlace } from "./limitContext.ts";
export type { LimitLine, LimitVerdict } from "./limitLine.ts";
export type { LimitRule } from "./limitRules.ts";
export { type BranchCurrent, type LimitsReport, limits, type RadioAtPeak } from "./limits.ts";
export { USUAL_DROP_SHARE } from "./usualDrop.ts";
export type { WiringRun } from "./wiringRuns.ts";
