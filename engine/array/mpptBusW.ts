import type { GroupDetail } from "./groupDetail.ts";
import type { PreparedGroup } from "./prepareGroup.ts";

/**
 * Power at the bank from a group whose controller follows the power point, W, while the group is out.
 *
 * Sections in series: with k of a string's N sections conducting, the current is that of the k-th brightest and the
 * voltage that of k sections less the drop of N − k bypass diodes. The best k wins; a controller that only steps down
 * may take it only where the string stands far enough above the bank. This is cautious in mild shade, where a real
 * string gains some voltage as its current falls (one cell of 36 at three quarters of its light: 0.75 here, 0.87 real).
 * The power point's voltage follows temperature, not light: in very dim light real modules run a little lower.
 * @param glassBeamWm2 beam that would get through the glass with no shade
 * @param diffuseWm2 all other light, the same on every section
 * @param warmK cell temperature above 25 °C
 * @see A. Dobos, PVWatts Version 5 Manual, NREL/TP-6A20-62641, 2014 (power of a module by light and temperature)
 */
export function mpptBusW(
  group: PreparedGroup,
  i: number,
  glassBeamWm2: number,
  diffuseWm2: number,
  warmK: number,
  busV: number,
  detail: GroupDetail | undefined,
): number {
  const { sections, perSection, vmpV, bypassShare, sectionShare } = group;
  const warmShare = 1 + group.powerTempCoeffPerK * warmK;
  const leastVoltShare = (busV + group.headroomV) / vmpV;
  const first = i * sections - 1;
  let best = 0;
  let bestVoltShare = 0;
  let bestSections = 0;
  let before = -1;
  for (let k = sections; k > 0; k--) {
    const share = sectionShare[first + k]!;
    if (share === before) continue; // equal light over fewer sections gives less
    before = share;
    const voltShare = k * perSection * warmShare - (sections - k) * bypassShare;
    if (voltShare < leastVoltShare) break; // and fewer sections stand lower still
    const power = Math.max(0, glassBeamWm2 * share + diffuseWm2) * voltShare;
    if (power > best) {
      best = power;
      bestVoltShare = voltShare;
      bestSections = k;
    }
  }
  const dcW = best * group.ratedWPerWm2;
  const keptW = dcW * group.keptShare;
  const stringV = vmpV * bestVoltShare;

  let busW = 0;
  let cableLossW = 0;
  let intoControllerW = keptW;
  let givenW = 0;
  let limitedW = 0;
  if (dcW > 0) {
    if (group.controllerAtBank) {
      // The panels' end of the cable is held at the power point, so the current is known and the loss exact.
      const currentA = keptW / stringV;
      cableLossW = Math.min(keptW, currentA * currentA * group.cableOhm);
      intoControllerW = keptW - cableLossW;
      givenW = intoControllerW * group.efficiencyShare;
      busW = Math.min(givenW, group.maxChargeA * busV);
      limitedW = givenW - busW;
    } else {
      // The bank's end is held at busV: I (busV + I R) = givenW, solved for I.
      givenW = keptW * group.efficiencyShare;
      const freeA = (2 * givenW) / (busV + Math.sqrt(busV * busV + 4 * givenW * group.cableOhm));
      const busA = Math.min(freeA, group.maxChargeA);
      busW = busA * busV;
      cableLossW = busA * busA * group.cableOhm;
      limitedW = freeA > busA ? givenW - busW - cableLossW : 0;
    }
  }
  if (detail !== undefined) {
    detail.sectionsConducting[i] = bestSections;
    detail.mppV[i] = stringV;
    detail.dcW[i] = dcW;
    detail.lossesW[i] = dcW - keptW;
    detail.cableLossW[i] = cableLossW;
    detail.controllerLossW[i] = intoControllerW - givenW;
    detail.limitedW[i] = limitedW;
  }
  return busW;
}
