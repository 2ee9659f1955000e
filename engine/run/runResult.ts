import type { GroupDetail } from "../array/groupDetail.ts";
import type { Prepared } from "./prepare.ts";
import type { RunRecord } from "./runRecord.ts";

/** One finished run with every quantity at every step, before anybody has added it up. */
export interface RunResult {
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
}
