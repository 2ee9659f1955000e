import { type FixedPower, MEMBER_CROWNS, MEMBER_YIELD } from "./fixedPower.ts";
import type { GroupDetail } from "./groupDetail.ts";
import {
  BEST_A,
  BEST_K,
  BEST_V,
  BEST_W,
  CELL_C,
  DIFFUSE_WM2,
  GLASS_BEAM_WM2,
  PLANE_SLOTS,
  PLANE_WM2,
} from "./planeSlots.ts";
import { type PreparedGroup, underCrowns } from "./preparedGroup.ts";
import { MEAN_SHARE, OUT_SHARE } from "./slots.ts";
import { stepGroup } from "./stepGroup.ts";

/**
 * Notes what happened on the way from light to bank in step `i` of a member by itself, after `stepGroup` has run for it.
 * @param plane the group's own rows; @param freePlane those of `group.unshaded`, or the same where nothing stands about
 * @param busW holds the power that `stepGroup` found, at `busWAt`
 */
export function writeDetail(
  group: PreparedGroup,
  i: number,
  plane: Float64Array,
  freePlane: Float64Array,
  volts: Float64Array,
  voltsAt: number,
  busW: Float64Array,
  busWAt: number,
  fixed: FixedPower,
  detail: GroupDetail,
): void {
  const at = i * PLANE_SLOTS;
  const ownAt = i * group.stride;
  const outShare = group.perStep[ownAt + OUT_SHARE]!;
  const givenAtBankW = busW[busWAt]!;
  let freeW = givenAtBankW;
  if (group.unshaded !== null) {
    stepGroup(group.unshaded, i, 0, i, freePlane, volts, voltsAt, detail.shadeLossW, i, fixed);
    freeW = detail.shadeLossW[i]!;
  }
  // Losses, cable, controller, in the order in which the power meets them.
  const stringA = plane[at + BEST_A]! * fixed.ofMember[MEMBER_YIELD]!;
  const stringV = plane[at + BEST_V]!;
  const keptA = stringA * group.keptShare;
  const keptW = keptA * stringV;
  const givenW = plane[at + BEST_W]! * (group.passedShare * fixed.ofMember[MEMBER_YIELD]!);
  const outW = outShare > 0 ? givenAtBankW / outShare : 0;
  const cableA = group.controllerAtBank ? keptA : outW / volts[voltsAt]!;
  const cableLossW = cableA * cableA * group.cableOhm;
  const intoControllerW = group.controllerAtBank ? keptW - cableLossW : keptW;
  const deliveredW = group.controllerAtBank ? outW : outW + cableLossW;
  detail.planeBeforeWm2[i] = outShare * freePlane[at + PLANE_WM2]!;
  detail.planeWm2[i] = outShare * plane[at + PLANE_WM2]!;
  const meanShare = underCrowns(group, i, MEAN_SHARE, fixed.ofMember[MEMBER_CROWNS]!);
  detail.effectiveWm2[i] = outShare * (plane[at + GLASS_BEAM_WM2]! * meanShare + plane[at + DIFFUSE_WM2]!);
  detail.cellTempC[i] = plane[at + CELL_C]!;
  detail.sectionsConducting[i] = plane[at + BEST_K]!;
  detail.mppV[i] = stringV;
  detail.seenV[i] = volts[voltsAt]!;
  detail.dcW[i] = outShare * stringA * stringV;
  detail.lossesW[i] = outShare * (stringA * stringV - keptW);
  detail.cableLossW[i] = outShare * cableLossW;
  detail.controllerLossW[i] = outShare * (intoControllerW - givenW);
  detail.limitedW[i] = outShare * Math.max(0, givenW - deliveredW);
  detail.busW[i] = givenAtBankW;
  detail.shadeLossW[i] = freeW - givenAtBankW;
}
