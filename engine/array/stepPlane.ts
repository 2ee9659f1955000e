import type { SkyLight } from "../sky/splitDiffuse.ts";
import { type FixedPower, MEMBER_CROWNS, MEMBER_YIELD } from "./fixedPower.ts";
import { mildlyLitWm2 } from "./mildlyLitWm2.ts";
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
import type { PreparedGroup } from "./preparedGroup.ts";
import {
  BEAM_RATIO,
  COS_INCIDENCE,
  GROUND_SHARE,
  HEAT_K_PER_WM2,
  INCIDENCE_SHARE,
  MEAN_SHARE,
  OUT_SHARE,
  PER_EXTRATERRESTRIAL,
  SECTION_SHARE,
  SKY_SHARE,
} from "./slots.ts";
import { perezHorizonShare, perezSunShare } from "./transposition.ts";

/** Cell temperature at which modules are rated, °C. */
export const RATED_TEMP_C = 25;

/**
 * First half of a group's work, for all steps of an event at once, since the bank has no say in it: light on the plane, what
 * shade and glass leave of it, how warm that makes the cells, and which number of conducting sections gives most.
 *
 * *Sections.* With k of a string's N sections conducting, the current is that of the k-th brightest and the voltage that
 * of k sections less the drop of N − k bypass diodes; the k that brings most through the cable to a tracking controller
 * wins. This is cautious in mild shade (one cell of 36 at three quarters of its light: 0.75 here, 0.87 real); see
 * `mildlyLitWm2` for the other rule. The power point's voltage follows temperature and not light: in dim light real modules run a little lower.
 *
 * *Fixed power.* In most steps of most groups the bank's volts cannot change what the group gives: a tracking controller whose
 * choice of sections stands above any volts that the bank may have, and whose current limit is out of reach. Such a step's
 * power is added to `fixed.sumW` and done with; for the others a bit is set, and `stepGroup` has the last word.
 *
 * One loop over the steps and not one call for each: what a group is stays at hand, which halves the time.
 * @param light the sky of a member; one value per step
 * @param airTempC one value per step
 * @param g number of the group, 0…19: its bit in `fixed.hanging`
 * @param plane receives `PLANE_SLOTS` numbers per step, in the places that `planeSlots.ts` names; those of steps with fixed power
 *   only where `noteAll` asks for them
 * @param noteAll whether every step is written into `plane`: traces, and runs in which one input shuts out another
 * @see A. Dobos, PVWatts Version 5 Manual, NREL/TP-6A20-62641, 2014 (power of a module by light and temperature)
 */
export function stepPlane(
  group: PreparedGroup,
  g: number,
  light: SkyLight,
  airTempC: Float64Array,
  plane: Float64Array,
  fixed: FixedPower,
  noteAll: boolean,
): void {
  const { perStep, stride, sections, perSection, bypassV, vmpV, vmpVPerK, ratedAPerWm2, trackedOhm } = group;
  const { ghiWm2, dniWm2, dhiWm2 } = light;
  const isHayDavies = group.transposition === "hayDavies";
  const isPerez = group.transposition === "perez";
  const { sumW, hanging } = fixed;
  const mayFix = (group.controllerAtBank && !group.isPwm) === true;
  const mildShade = group.mildShade === true;
  const asksAll = noteAll === true;
  const leastV = fixed.highestV + group.headroomV;
  const mostW = group.maxChargeA * fixed.lowestV;
  const passedShare = group.passedShare * fixed.ofMember[MEMBER_YIELD]!;
  // Crowns between those planned and the darkest or the lightest, as `underCrowns` has them.
  const lean = fixed.ofMember[MEMBER_CROWNS]!;
  const far = Math.abs(lean);
  const more = lean < 0 ? group.moreDarker : group.moreLighter;
  const { crownStride } = group;
  const bit = 1 << g;
  const steps = ghiWm2.length;
  for (let i = 0; i < steps; i++) {
    const at = i * stride;
    const crownAt = i * crownStride - SKY_SHARE;
    const to = i * PLANE_SLOTS;
    const ghi = ghiWm2[i]!;
    const outShare = perStep[at + OUT_SHARE]!;
    if (ghi <= 0 || outShare <= 0) {
      if (!asksAll) continue;
      plane[to + BEST_W] = 0;
      plane[to + BEST_V] = 0;
      plane[to + BEST_A] = 0;
      plane[to + BEST_K] = 0;
      plane[to + GLASS_BEAM_WM2] = 0;
      plane[to + DIFFUSE_WM2] = 0;
      plane[to + PLANE_WM2] = 0;
      plane[to + CELL_C] = airTempC[i]!;
      continue;
    }

    // Light on the plane: what comes from the sun's direction, which shade and glass treat alike, and the rest.
    const dni = dniWm2[i]!;
    const dhi = dhiWm2[i]!;
    const skyShare = perStep[at + SKY_SHARE]! + far * more[crownAt + SKY_SHARE]!;
    const meanShare = perStep[at + MEAN_SHARE]! + far * more[crownAt + MEAN_SHARE]!;
    let sunShare = 0;
    let horizonShare = 0;
    if (isHayDavies) {
      const share = dni * 0.001 * perStep[at + PER_EXTRATERRESTRIAL]!;
      sunShare = share < 1 ? share : 1;
    } else if (isPerez && dhi > 0) {
      sunShare = perezSunShare(group.perez, i, dni, dhi);
      // A dark horizon may take all of the even sky's light, but no more.
      horizonShare = Math.max(perezHorizonShare(group.perez, i, dni, dhi), (sunShare - 1) * skyShare);
    }
    const beamWm2 = dni * perStep[at + COS_INCIDENCE]! + dhi * perStep[at + BEAM_RATIO]! * sunShare;
    const diffuseWm2 = dhi * (skyShare * (1 - sunShare) + horizonShare) + ghi * perStep[at + GROUND_SHARE]!;
    const planeWm2 = beamWm2 * meanShare + diffuseWm2;
    const glassBeamWm2 = beamWm2 * perStep[at + INCIDENCE_SHARE]!;
    const planeBehindGlassWm2 = glassBeamWm2 * meanShare + diffuseWm2;
    const cellC = airTempC[i]! + planeWm2 * perStep[at + HEAT_K_PER_WM2]!;

    // The best number of conducting sections. Equal light over fewer sections gives less, so ties are passed over.
    const warmVmpV = vmpV + vmpVPerK * (cellC - RATED_TEMP_C);
    const first = at + SECTION_SHARE - 1;
    const firstMore = crownAt + SECTION_SHARE - 1;
    const brightestShare = perStep[first + 1]! + far * more[firstMore + 1]!;
    let share = -1;
    let bestW = 0;
    let bestV = 0;
    let bestA = 0;
    let bestK = 0;
    for (let k = sections; k > 0 && share !== brightestShare; k--) {
      const thisShare = perStep[first + k]! + far * more[firstMore + k]!;
      if (thisShare === share) continue;
      share = thisShare;
      const sectionsV = k * perSection * warmVmpV - (sections - k) * bypassV;
      const evenWm2 = glassBeamWm2 * share + diffuseWm2;
      const litWm2 = mildShade ? mildlyLitWm2(evenWm2, planeBehindGlassWm2) : evenWm2;
      const litA = litWm2 * ratedAPerWm2;
      const powerW = litA * (sectionsV - litA * trackedOhm);
      if (powerW > bestW) {
        bestW = powerW;
        bestV = sectionsV;
        bestA = litA;
        bestK = k;
      }
    }
    const givenW = bestW * passedShare;
    if (mayFix && givenW <= mostW && (bestV >= leastV || bestK === 0)) {
      sumW[i]! += outShare * givenW;
      if (!asksAll) continue;
    } else hanging[i]! |= bit;
    plane[to + BEST_W] = bestW;
    plane[to + BEST_V] = bestV;
    plane[to + BEST_A] = bestA;
    plane[to + BEST_K] = bestK;
    plane[to + GLASS_BEAM_WM2] = glassBeamWm2;
    plane[to + DIFFUSE_WM2] = diffuseWm2;
    plane[to + PLANE_WM2] = planeWm2;
    plane[to + CELL_C] = cellC;
  }
}
