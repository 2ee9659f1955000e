import type { GroupDetail } from "./groupDetail.ts";
import type { PreparedGroup } from "./prepareGroup.ts";

/** Keeps a data sheet whose power point rises over its open voltage in the cold from dividing by nothing. */
const LEAST_SPAN_V = 0.1;

/**
 * Power at the bank from a group whose controller ties the strings to the bank, W, while the group is out.
 *
 * With k of a string's N sections conducting, the current is the power point's, in proportion to the light on the k-th
 * brightest, up to those sections' voltage at the power point; above it the current falls as 1 − x³ and is nothing at
 * their open voltage. (A single-diode curve lies within 0.1 of that.) Below the power point a real panel gives up to a
 * twentieth more. The best k wins. The strings stand above the bank by the drop in the cable, taken at the current they
 * would have without it: one step of correction, on the cautious side.
 * @param glassBeamWm2 beam that would get through the glass with no shade
 * @param diffuseWm2 all other light, the same on every section
 * @param warmK cell temperature above 25 °C
 */
export function pwmBusW(
  group: PreparedGroup,
  i: number,
  glassBeamWm2: number,
  diffuseWm2: number,
  warmK: number,
  busV: number,
  detail: GroupDetail | undefined,
): number {
  const { sections, perSection, bypassV, sectionShare, cableOhm, keptShare } = group;
  const warmVmpV = group.vmpV * (1 + group.powerTempCoeffPerK * warmK);
  const warmVocV = group.vocV * (1 + group.vocTempCoeffPerK * warmK);
  const first = i * sections - 1;
  let bestA = 0;
  let bestSections = 0;
  let before = -1;
  for (let k = sections; k > 0; k--) {
    const share = sectionShare[first + k]!;
    if (share === before) continue; // equal light over fewer sections gives less
    before = share;
    const litA = Math.max(0, glassBeamWm2 * share + diffuseWm2) * group.impAPerWm2;
    const stringV = busV + litA * keptShare * cableOhm;
    const droppedV = (sections - k) * bypassV;
    const kneeV = k * perSection * warmVmpV - droppedV;
    const openV = k * perSection * warmVocV - droppedV;
    const past = Math.max(0, (stringV - kneeV) / Math.max(LEAST_SPAN_V, openV - kneeV));
    const currentA = litA * Math.max(0, 1 - past * past * past);
    if (currentA > bestA) {
      bestA = currentA;
      bestSections = k;
    }
  }
  const keptA = bestA * keptShare;
  const busA = Math.min(keptA * group.efficiencyShare, group.maxChargeA);
  if (detail !== undefined) {
    const stringV = busV + keptA * cableOhm;
    detail.sectionsConducting[i] = bestSections;
    detail.mppV[i] = bestSections > 0 ? stringV : 0;
    detail.dcW[i] = bestA * stringV;
    detail.lossesW[i] = (bestA - keptA) * stringV;
    detail.cableLossW[i] = keptA * keptA * cableOhm;
    detail.controllerLossW[i] = keptA * (1 - group.efficiencyShare) * busV;
    detail.limitedW[i] = (keptA * group.efficiencyShare - busA) * busV;
  }
  return busA * busV;
}
