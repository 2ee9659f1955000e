import { type Correction, fitCorrection } from "../../actual/fitCorrection.ts";
import { type Miss, type PlanAgainstActual, planAgainstActual } from "../../actual/planAgainstActual.ts";
import type { MeterLog } from "../../meter/meterLog.ts";
import type { TimePicture } from "../../ruler/timePicture.ts";
import { timePicture } from "../../ruler/timePicture.ts";
import type { Surroundings } from "../../run/surroundings.ts";
import type { Problem } from "../../scenario/problem.ts";
import type { Scenario } from "../../scenario/scenario.ts";

/** A plan with what was metered laid over it: plain data that a worker can hand over. NaN where the log says nothing. */
export interface ActualPicture {
  readonly time: TimePicture;
  readonly fullAh: number;
  readonly reserveShare: number;
  readonly coveredShare: number;
  readonly plan: {
    readonly chargeShare: Float64Array;
    readonly loadW: Float64Array;
    /** What the panels give and the bank takes. */
    readonly sunW: Float64Array;
  };
  readonly actual: {
    readonly chargeShare: Float64Array | null;
    readonly loadW: Float64Array | null;
    readonly sunW: Float64Array | null;
  };
  readonly days: PlanAgainstActual["days"];
  readonly miss: Miss | null;
  readonly widest: Miss | null;
  readonly findings: readonly string[];
  /** Null where the log says too little; the finding says so. */
  readonly correction: Correction | null;
}

/** A scenario held against a meter's log, with all that was worked out on the way. */
export interface HeldAgainst {
  readonly against: PlanAgainstActual;
  /** Not there where the log says too little. */
  readonly fit: ReturnType<typeof fitCorrection>;
}

/** Holds a scenario against a log, and finds by how much its figures are to be corrected. @param seed of the search for them */
export function heldAgainst(
  scenario: Scenario,
  log: MeterLog,
  surroundings: Surroundings,
  seed?: string,
): ({ readonly ok: true } & HeldAgainst) | { readonly ok: false; readonly problems: readonly Problem[] } {
  const fit = fitCorrection(scenario, log, surroundings, seed === undefined ? {} : { seed });
  const laid = planAgainstActual(scenario, log, surroundings, fit.ok ? fit.correction : null);
  return laid.ok ? { ok: true, against: laid.against, fit } : laid;
}

/** Takes from a scenario and its log what the page shows. */
export function actualPicture({ against, fit }: HeldAgainst): ActualPicture {
  const { plan, actual, coveredShare, days, findings, miss, widest } = against;
  const { prepared, record } = plan;
  return {
    time: timePicture({ prepared }),
    fullAh: prepared.bank.fullAh,
    reserveShare: prepared.bank.reserveAh / prepared.bank.fullAh,
    coveredShare,
    plan: {
      chargeShare: plan.chargeShare.slice(),
      loadW: record.demandW.slice(),
      sunW: record.solarW.map((watts, i) => watts - record.spilledW[i]!),
    },
    actual: { chargeShare: actual.chargeShare, loadW: actual.loadW, sunW: actual.pvW },
    days,
    miss,
    widest,
    findings: [
      ...findings.map(({ message }) => message),
      ...(fit.ok ? [] : fit.problems.map(({ message }) => message)),
    ],
    correction: fit.ok ? fit.correction : null,
  };
}
