import { type AcceptedCorrection, acceptCorrection } from "../actual/acceptCorrection.ts";
import { type Correction, fitCorrection } from "../actual/fitCorrection.ts";
import { type PlanAgainstActual, planAgainstActual } from "../actual/planAgainstActual.ts";
import type { MeterFinding } from "../meter/meterLog.ts";
import { type MeterMapping, readMeterMapping } from "../meter/meterMapping.ts";
import { readMeterLog } from "../meter/readMeterLog.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { zoneOf } from "../scenario/zoneOf.ts";
import type { Answer } from "./answer.ts";
import { requireScenario } from "./requireScenario.ts";

/** How a meter's log is to be read. */
export interface ActualOptions {
  /** What is in which column, in which form and on which clock; what is left out is found in the log. */
  readonly mapping?: MeterMapping;
}

/** A plan held against what a meter wrote. */
export interface ActualReport extends PlanAgainstActual {
  /** By how much each figure of the plan is off, and how surely. */
  readonly correction: Correction;
  /** The figures that the log found, as changes: `applyChanges` makes the calibrated scenario. Empty where it found none. */
  readonly accepted: AcceptedCorrection;
  /** The complete mapping that the log was read with; it fits the next log of the same meter. */
  readonly mapping: MeterMapping;
}

/**
 * Holds a scenario against what a meter logged: by how much the plan missed and why, and which of its figures to correct.
 * @param scenario as `readScenario` gives it
 * @param log the meter's table as text: a line of titles, one line per row, at most 10 million characters and 400,000 rows
 * @param surroundings the climate of the place, and the weather file where the scenario names one
 * @param options how to read the log; found in it when left out
 * @returns the run and the log side by side on the plan's steps (W, shares of full), the miss in shares of full and Wh split into start, load,
 *   sun and capacity, the correction with its 90 % range, and what is odd about the log; problems where the log or the mapping cannot be read
 *   or has nothing in common with the event, or the surroundings lack something
 * @throws TypeError if the scenario is none
 * @see docs/odds.md; the split is L. S. Shapley's value (1953)
 */
export function actual(
  scenario: Scenario,
  log: string,
  surroundings: Surroundings = {},
  { mapping = {} }: ActualOptions = {},
): Answer<ActualReport> {
  requireScenario(scenario);
  const known = readMeterMapping(mapping);
  if (!known.ok) return known;
  const reading = readMeterLog(log, known.mapping, zoneOf(scenario.place));
  if (!reading.ok) return reading;
  const fit = fitCorrection(scenario, reading.log, surroundings);
  const laid = planAgainstActual(scenario, reading.log, surroundings, fit.ok ? fit.correction : null);
  if (!laid.ok) return laid;
  if (!fit.ok) return fit;
  const { correction } = fit;
  const findings: MeterFinding[] = [...reading.findings, ...laid.against.findings];
  const accepted = acceptCorrection(scenario, correction);
  const report = { ...laid.against, findings, correction, accepted, mapping: reading.mapping };
  return { ok: true, report, remarks: laid.against.plan.prepared.remarks };
}
