import type { OwnedThing } from "../../packing/ownedThing.ts";
import type { PackingReport } from "../../packing/packingReport.ts";
import type { PackList } from "../../packing/packList.ts";
import type { Change } from "../../scenario/change.ts";

/** What to take along. */
export interface PackingPicture {
  readonly report: PackingReport;
  /** The list that it was worked out from: places of things in the report are places of it. */
  readonly things: readonly OwnedThing[];
  /** What each set of the frontier changes about the plan, in its order. */
  readonly changes: readonly (readonly Change[])[];
  /** What of the plan is fitted or comes along in any case, named. */
  readonly fitted: readonly string[];
  /** The list to print for the proposal; null where nothing is proposed. */
  readonly list: PackList | null;
}
