import type { GroupDetail } from "../engine/array/groupDetail.ts";
import type { PreparedGroup } from "../engine/array/prepareGroup.ts";
import { stepGroup } from "../engine/array/stepGroup.ts";
import type { SkyLight } from "../engine/sky/splitDiffuse.ts";

/** Power of a panel group in one step, W, for one bus voltage: `stepGroup` where speed does not matter. */
export function groupBusW(
  group: PreparedGroup,
  i: number,
  light: SkyLight,
  airTempC: Float64Array,
  busV: number,
  detail?: GroupDetail,
): number {
  const slot = Float64Array.of(busV, 0);
  stepGroup(group, i, light, airTempC, slot, 0, slot, 1, detail);
  return slot[1]!;
}
