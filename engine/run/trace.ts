import { storedWh } from "../bank/bankVoltage.ts";
import { EngineFault } from "../fault.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { type DayFigures, dayFigures } from "./dayFigures.ts";
import { type Prepared, prepare } from "./prepare.ts";
import { makeRunDetails } from "./runDetails.ts";
import { runRecord } from "./runRecord.ts";
import type { RunResult } from "./runResult.ts";
import { makeRunRows } from "./runRows.ts";
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
  const { grid, bank, groups } = prepared;
  const { steps, stepH } = grid;
  const rows = makeRunRows(prepared);
  const runDetails = makeRunDetails(groups, rows.planes, steps);
  stepRun(prepared, prepared.light, prepared.airTempC, prepared.inputs, rows, runDetails);
  const record = runRecord(prepared, rows);
  const chargeShare = record.storedAh.map((ah) => ah / bank.fullAh);
  const bankLossW = new Float64Array(steps);
  const servedShare = new Float64Array(steps);
  for (let i = 0; i < steps; i++) {
    if (!Number.isFinite(record.storedAh[i + 1]!))
      throw new EngineFault(`charge after step ${i} is ${record.storedAh[i + 1]}`);
    const gainedWh = storedWh(bank, record.storedAh[i + 1]!) - storedWh(bank, record.storedAh[i]!);
    bankLossW[i] = record.bankW[i]! - gainedWh / stepH;
    const wantedW = record.demandW[i]! - prepared.controllersW;
    servedShare[i] = wantedW > 0 ? Math.max(0, Math.min(1, (wantedW - record.unservedW[i]!) / wantedW)) : 1;
  }
  const run = { prepared, record, details: runDetails.groups, chargeShare, bankLossW, servedShare };
  return { ...run, days: dayFigures(run), verdict: verdictOf(run) };
}
