import { type GroupDetail, groupDetail } from "../array/groupDetail.ts";
import { storedWh } from "../bank/bankVoltage.ts";
import { EngineFault } from "../fault.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { type DayFigures, dayFigures } from "./dayFigures.ts";
import { type Prepared, prepare, type Surroundings } from "./prepare.ts";
import { makeRunRecord, type RunRecord } from "./runRecord.ts";
import { stepRun } from "./stepRun.ts";
import { type Verdict, verdictOf } from "./verdict.ts";

/** One run of a scenario, with every quantity at every step. */
export interface Trace {
  readonly prepared: Prepared;
  readonly record: RunRecord;
  /** What happened on the way from light to bank, one per panel group. */
  readonly details: readonly GroupDetail[];
  /** Charge at each step's start and at the end, share of full. */
  readonly chargeShare: Float64Array;
  /** Energy that the bank turned into heat or kept back in each step, W. */
  readonly bankLossW: Float64Array;
  /** Share of what the loads wanted that they got, per step, 0…1. */
  readonly servedShare: Float64Array;
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
  const { grid, bank, groups, loads } = prepared;
  const { steps, stepH } = grid;
  const record = makeRunRecord(
    steps,
    groups.length,
    prepared.sources.length,
    loads.stations.length,
    prepared.selector.inputs,
  );
  const details = groups.map(() => groupDetail(steps));
  stepRun(prepared, prepared.light, prepared.airTempC, record, details);
  const chargeShare = record.storedAh.map((ah) => ah / bank.fullAh);
  const bankLossW = new Float64Array(steps);
  const servedShare = new Float64Array(steps);
  for (let i = 0; i < steps; i++) {
    if (!Number.isFinite(record.storedAh[i + 1]!))
      throw new EngineFault(`charge after step ${i} is ${record.storedAh[i + 1]}`);
    const gainedWh = storedWh(bank, record.storedAh[i + 1]!) - storedWh(bank, record.storedAh[i]!);
    bankLossW[i] = record.bankW[i]! - gainedWh / stepH;
    const wantedW = loads.wantedW[i]! / prepared.converterShare;
    servedShare[i] = wantedW > 0 ? Math.max(0, Math.min(1, (wantedW - record.unservedW[i]!) / wantedW)) : 1;
  }
  const run = { prepared, record, details, chargeShare, bankLossW, servedShare };
  return { ...run, days: dayFigures(run), verdict: verdictOf(run) };
}
