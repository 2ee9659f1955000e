import { type Correction, fitCorrection } from "../../actual/fitCorrection.ts";
import { type Miss, type PlanAgainstActual, planAgainstActual } from "../../actual/planAgainstActual.ts";
import type { TimePicture } from "../../ruler/timePicture.ts";
import { timePicture } from "../../ruler/timePicture.ts";
import type { Surroundings } from "../../run/surroundings.ts";
import type { Problem } from "../../scenario/problem.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import type { KeptLog } from "./doc.ts";
import { meterLogOf } from "./keptLog.ts";

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

/** Holds a scenario against a kept log, and finds by how much its figures are to be corrected. */
export function actualPicture(
  scenario: Scenario,
  kept: KeptLog,
  surroundings: Surroundings,
  seed: string,
):
  | { readonly ok: true; readonly picture: ActualPicture }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  const log = meterLogOf(kept);
  const fit = fitCorrection(scenario, log, surroundings, { seed });
  const correction = fit.ok ? fit.correction : null;
  const laid = planAgainstActual(scenario, log, surroundings, correction);
  if (!laid.ok) return laid;
  const { plan, actual, coveredShare, days, findings, miss, widest } = laid.against;
  const { prepared, record } = plan;
  return {
    ok: true,
    picture: {
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
      correction,
    },
  };
}
