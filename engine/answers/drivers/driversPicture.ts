import type { DriversReport } from "../../drivers/driversReport.ts";

/** What the outcome depends on. */
export interface DriversPicture {
  readonly report: DriversReport;
  readonly remarks: readonly string[];
}
