import { makeDomeLight } from "../engine/array/domeLight.ts";
import { makeFixedPower } from "../engine/array/fixedPower.ts";
import { type GroupDetail, groupDetail } from "../engine/array/groupDetail.ts";
import { PLANE_SLOTS } from "../engine/array/planeSlots.ts";
import type { PreparedGroup } from "../engine/array/preparedGroup.ts";
import { stepDome } from "../engine/array/stepDome.ts";
import { stepGroup } from "../engine/array/stepGroup.ts";
import { stepPlane } from "../engine/array/stepPlane.ts";
import { writeDetail } from "../engine/array/writeDetail.ts";
import type { SkyLight } from "../engine/sky/splitDiffuse.ts";

/** Power of a panel group in one step, W, for one bus voltage: both halves of the step where speed does not matter. */
export function groupBusW(
  group: PreparedGroup,
  i: number,
  light: SkyLight,
  airTempC: Float64Array,
  busV: number,
  detail?: GroupDetail,
): number {
  const slot = Float64Array.of(busV, 0);
  const steps = light.ghiWm2.length;
  const sorted = makeDomeLight(group.dome.transposition, steps, 1);
  stepDome(group.dome, light, airTempC, sorted, 0);
  const planeOf = (each: PreparedGroup) => {
    const plane = new Float64Array(steps * PLANE_SLOTS);
    stepPlane(each, 0, sorted, 1, plane, makeFixedPower(steps, 0, 0), true);
    return plane;
  };
  const plane = planeOf(group);
  const fixed = makeFixedPower(steps, 0, 0);
  stepGroup(group, i, 0, i, plane, slot, 0, slot, 1, fixed);
  const freePlane = group.unshaded === null ? plane : planeOf(group.unshaded);
  writeDetail(group, i, plane, freePlane, slot, 0, slot, 1, fixed, detail ?? groupDetail(steps));
  return slot[1]!;
}
