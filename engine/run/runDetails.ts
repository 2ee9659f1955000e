import { type FixedPower, makeFixedPower } from "../array/fixedPower.ts";
import { type GroupDetail, groupDetail } from "../array/groupDetail.ts";
import { PLANE_SLOTS } from "../array/planeSlots.ts";
import type { PreparedGroup } from "../array/preparedGroup.ts";

/** What a single trace notes besides the rows; ensembles leave it out. One entry per panel group. */
export interface RunDetails {
  readonly groups: readonly GroupDetail[];
  /** Plane rows of the groups with nothing standing about. */
  readonly freePlanes: readonly Float64Array[];
  /** Of no use to a trace, but `stepPlane` writes there. */
  readonly freeFixed: FixedPower;
}

/** Room for the details of a run; `planes` are the run's own rows, which serve where nothing stands about. */
export function makeRunDetails(
  groups: readonly PreparedGroup[],
  planes: readonly Float64Array[],
  steps: number,
): RunDetails {
  return {
    groups: groups.map(() => groupDetail(steps)),
    freePlanes: groups.map((group, g) =>
      group.unshaded === null ? planes[g]! : new Float64Array(steps * PLANE_SLOTS),
    ),
    freeFixed: makeFixedPower(steps, 0, 0),
  };
}
