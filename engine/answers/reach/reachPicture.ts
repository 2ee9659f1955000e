import type { ReachReport } from "../../reach/reachReport.ts";

/** What it would take. */
export interface ReachPicture {
  readonly report: ReachReport;
  /** Every lever of the plan, as it can be locked. */
  readonly levers: readonly { readonly id: string; readonly name: string }[];
}
