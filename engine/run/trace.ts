import { storedWh } from "../bank/bankVoltage.ts";
import { EngineFault } from "../fault.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { type DayFigures, dayFigures } from "./dayFigures.ts";
import { FIGURE_CAPACITY_SHARE } from "./memberFigures.ts";
import { type Prepared, prepare } from "./prepare.ts";
import { makeRunDetails, type RunDetails } from "./runDetails.ts";
import { runRecord } from "./runRecord.ts";
import type { RunResult } from "./runResult.ts";
import { makeRunRows, type RunRows } from "./runRows.ts";
import { stepRun } from "./stepRun.ts";
import type { Surroundings } from "./surroundings.ts";
import { type Verdict, verdictOf } from "./verdict.ts";

/** One run of a scenario, with every quantity at every step and its sums. */
export interface Trace extends RunResult {
  readonly days: readonly DayFigures[];
  readonly verdict: Verdict;
}

/** Runs a scenario once under its stated weather. */
export function trace(
  scenario: Scenario,
  surroundings: Surroundings = {},
): { ok: true; trace: Trace } | { ok: false; problems: readonly Problem[] } {
  const result = prepare(scenario, surroundings);
  return result.ok ? { ok: true, trace: tracePrepared(result.prepared) } : result;
}

/** Runs a prepared scenario once under its own sky. */
export function tracePrepared(prepared: Prepared): Trace {
  const rows = makeRunRows(prepared);
  const details = makeRunDetails(prepared.groups, rows.planes, prepared.grid.steps);
  stepRun(prepared, prepared.light, prepared.airTempC, prepared.inputs, rows, details);
  return traceOf(prepared, rows, details);
}

/** Adds up a finished run. */
export function traceOf(prepared: Prepared, rows: RunRows, runDetails: RunDetails): Trace {
  const { grid, bank } = prepared;
  const { steps, stepH } = grid;
  const capacityShare = prepared.inputs.figures[FIGURE_CAPACITY_SHARE]!;
  const record = runRecord(prepared, rows);
  const chargeShare = record.storedAh.map((ah) => ah / bank.fullAh);
  const bankLossW = new Float64Array(steps);
  const servedShare = new Float64Array(steps);
  for (let i = 0; i < steps; i++) {
    if (!Number.isFinite(record.storedAh[i + 1]!)) {
      throw new EngineFault(`charge after step ${i} is ${record.storedAh[i + 1]}`);
    }
    const gainedWh = storedWh(bank, record.storedAh[i + 1]!) - storedWh(bank, record.storedAh[i]!);
    bankLossW[i] = record.bankW[i]! - (gainedWh * capacityShare) / stepH;
    const wantedW = record.demandW[i]! - prepared.controllersW;
    servedShare[i] = wantedW > 0 ? Math.max(0, Math.min(1, (wantedW - record.unservedW[i]!) / wantedW)) : 1;
  }
  const run = { prepared, record, details: runDetails.groups, chargeShare, bankLossW, servedShare };
  return { ...run, days: dayFigures(run), verdict: verdictOf(run) };
}
