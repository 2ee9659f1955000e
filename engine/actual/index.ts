/**
 * actual: a plan held against what a meter wrote. Log ─► loggedSteps (on the plan's steps) ─► planAgainstActual (overlay, and the miss split into
 * start, load, sun and capacity by replaying the bank) and fitCorrection (by how much each figure of the plan is off, and how surely) ─►
 * acceptCorrection (changes that make a calibrated scenario). clockOfLog asks the sun whether the log's clock is right. Reads meter and run; read by none.
 */
export { type AcceptedCorrection, acceptCorrection } from "./acceptCorrection.ts";
export { clockOfLog } from "./clockOfLog.ts";
export { type Correction, type CorrectionName, type FittedFigure, fitCorrection } from "./fitCorrection.ts";
export { type LoggedSteps, loggedSteps } from "./loggedSteps.ts";
export { type Miss, type MissPartName, type PlanAgainstActual, planAgainstActual } from "./planAgainstActual.ts";
