import { AIR_C, DOME_LIGHT_SLOTS, type DomeLight, EVEN_WM2, GHI_WM2, SUN_WM2 } from "./domeLight.ts";
import { type FixedPower, MEMBER_CROWNS, MEMBER_SLOTS, MEMBER_YIELD } from "./fixedPower.ts";
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
  BEAM_IS_FREE,
  COS_INCIDENCE,
  GROUND_SHARE,
  HEAT_K_PER_WM2,
  INCIDENCE_SHARE,
  MEAN_SHARE,
  OUT_SHARE,
  SECTION_SHARE,
  SKY_SHARE,
} from "./slots.ts";

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
 * One loop over the steps and not one call for each, and in it over members side by side: what a group is stays at hand, which halves the time
 * twice.
 * @param g number of the group, 0…19: its bit in `fixed.hanging`
 * @param light of each member, sorted by the group's own dome
 * @param lanes members side by side, from the first lane on
 * @param plane receives `PLANE_SLOTS` numbers for each step of each lane, in the places that `planeSlots.ts` names; those of steps with fixed
 *   power only where `noteAll` asks for them
 * @param noteAll whether every step is written into `plane`: traces, and runs in which one input shuts out another
 * @see A. Dobos, PVWatts Version 5 Manual, NREL/TP-6A20-62641, 2014 (power of a module by light and temperature)
 */
export function stepPlane(
  group: PreparedGroup,
  g: number,
  light: DomeLight,
  lanes: number,
  plane: Float64Array,
  fixed: FixedPower,
  noteAll: boolean,
): void {
  stepFreePlane(group, g, light, lanes, plane, fixed, noteAll);
  stepShadedPlane(group, g, light, lanes, plane, fixed, noteAll);
}

/** The steps in which nothing stands between sun and modules, and those without any light: all sections conduct. */
function stepFreePlane(
  group: PreparedGroup,
  g: number,
  light: DomeLight,
  lanes: number,
  plane: Float64Array,
  fixed: FixedPower,
  noteAll: boolean,
): void {
  const { perStep, stride, crownStride, moreDarker, moreLighter, horizonShare } = group;
  const { sections, vmpV, vmpVPerK, ratedAPerWm2, trackedOhm, passedShare } = group;
  const { sumW, hanging, ofMember } = fixed;
  const { rows: sky, horizonWm2 } = light;
  // Compared with true, because V8 asks at each use what a value may be that it knows to be yes or no only by its type here.
  const asksAll = noteAll === true;
  const mayFix = (group.controllerAtBank && !group.isPwm) === true;
  const isPerez = group.dome.transposition === "perez";
  const leastV = fixed.highestV + group.headroomV;
  const mostW = group.maxChargeA * fixed.lowestV;
  const steps = perStep.length / stride;
  for (let i = 0, at = 0; i < steps; i++, at += stride) {
    const outShare = perStep[at + OUT_SHARE]!;
    if (outShare <= 0) {
      if (asksAll) for (let lane = 0, cell = i; lane < lanes; lane++, cell += steps) writeDark(plane, cell, sky);
      continue;
    }
    if (perStep[at + BEAM_IS_FREE]! === 0) continue;
    const cosIncidence = perStep[at + COS_INCIDENCE]!;
    const groundShare = perStep[at + GROUND_SHARE]!;
    const incidenceShare = perStep[at + INCIDENCE_SHARE]!;
    const heatKPerWm2 = perStep[at + HEAT_K_PER_WM2]!;
    const plannedSkyShare = perStep[at + SKY_SHARE]!;
    const moreSkyDarker = moreDarker[i * crownStride]!;
    const moreSkyLighter = moreLighter[i * crownStride]!;
    for (let lane = 0, cell = i; lane < lanes; lane++, cell += steps) {
      const from = cell * DOME_LIGHT_SLOTS;
      const ghi = sky[from + GHI_WM2]!;
      if (ghi <= 0) {
        if (asksAll) writeDark(plane, cell, sky);
        continue;
      }
      const lean = ofMember[lane * MEMBER_SLOTS + MEMBER_CROWNS]!;
      const skyShare = plannedSkyShare + (lean < 0 ? -lean * moreSkyDarker : lean * moreSkyLighter);
      const beamWm2 = sky[from + SUN_WM2]! * cosIncidence;
      let fromSkyWm2 = sky[from + EVEN_WM2]! * skyShare;
      // A dark horizon may take all of the even sky's light, but no more.
      if (isPerez) fromSkyWm2 = Math.max(0, fromSkyWm2 + horizonWm2[cell]! * horizonShare[i]!);
      const diffuseWm2 = fromSkyWm2 + ghi * groundShare;
      const planeWm2 = beamWm2 + diffuseWm2;
      const glassBeamWm2 = beamWm2 * incidenceShare;
      const cellC = sky[from + AIR_C]! + planeWm2 * heatKPerWm2;
      const bestV = vmpV + vmpVPerK * (cellC - RATED_TEMP_C);
      const bestA = (glassBeamWm2 + diffuseWm2) * ratedAPerWm2;
      const bestW = bestA * (bestV - bestA * trackedOhm);
      const givenW = bestW * (passedShare * ofMember[lane * MEMBER_SLOTS + MEMBER_YIELD]!);
      if (mayFix && givenW <= mostW && (bestV >= leastV || bestW <= 0)) {
        if (bestW > 0) sumW[cell]! += outShare * givenW;
        if (!asksAll) continue;
      } else hanging[cell]! |= 1 << g;
      const to = cell * PLANE_SLOTS;
      const gives = bestW > 0;
      plane[to + BEST_W] = gives ? bestW : 0;
      plane[to + BEST_V] = gives ? bestV : 0;
      plane[to + BEST_A] = gives ? bestA : 0;
      plane[to + BEST_K] = gives ? sections : 0;
      plane[to + GLASS_BEAM_WM2] = glassBeamWm2;
      plane[to + DIFFUSE_WM2] = diffuseWm2;
      plane[to + PLANE_WM2] = planeWm2;
      plane[to + CELL_C] = cellC;
    }
  }
}

/** The steps in which some of the beam is taken: the best number of conducting sections. */
function stepShadedPlane(
  group: PreparedGroup,
  g: number,
  light: DomeLight,
  lanes: number,
  plane: Float64Array,
  fixed: FixedPower,
  noteAll: boolean,
): void {
  const { perStep, stride, crownStride, horizonShare } = group;
  const { sections, perSection, bypassV, vmpV, vmpVPerK, ratedAPerWm2, trackedOhm, passedShare } = group;
  const { sumW, hanging, ofMember } = fixed;
  const { rows: sky, horizonWm2 } = light;
  const asksAll = noteAll === true;
  const mildShade = group.mildShade === true;
  const mayFix = (group.controllerAtBank && !group.isPwm) === true;
  const isPerez = group.dome.transposition === "perez";
  const leastV = fixed.highestV + group.headroomV;
  const mostW = group.maxChargeA * fixed.lowestV;
  const steps = perStep.length / stride;
  for (let i = 0, at = 0; i < steps; i++, at += stride) {
    const outShare = perStep[at + OUT_SHARE]!;
    if (perStep[at + BEAM_IS_FREE]! > 0 || outShare <= 0) continue;
    const cosIncidence = perStep[at + COS_INCIDENCE]!;
    const groundShare = perStep[at + GROUND_SHARE]!;
    const incidenceShare = perStep[at + INCIDENCE_SHARE]!;
    const heatKPerWm2 = perStep[at + HEAT_K_PER_WM2]!;
    const plannedSkyShare = perStep[at + SKY_SHARE]!;
    const plannedMeanShare = perStep[at + MEAN_SHARE]!;
    const crownAt = i * crownStride - SKY_SHARE;
    const first = at + SECTION_SHARE - 1;
    const firstMore = crownAt + SECTION_SHARE - 1;
    for (let lane = 0, cell = i; lane < lanes; lane++, cell += steps) {
      const from = cell * DOME_LIGHT_SLOTS;
      const ghi = sky[from + GHI_WM2]!;
      if (ghi <= 0) {
        if (asksAll) writeDark(plane, cell, sky);
        continue;
      }
      // Crowns between those planned and the darkest or the lightest, as `underCrowns` has them.
      const lean = ofMember[lane * MEMBER_SLOTS + MEMBER_CROWNS]!;
      const far = lean < 0 ? -lean : lean;
      const more = lean < 0 ? group.moreDarker : group.moreLighter;
      const beamWm2 = sky[from + SUN_WM2]! * cosIncidence;
      let fromSkyWm2 = sky[from + EVEN_WM2]! * (plannedSkyShare + far * more[crownAt + SKY_SHARE]!);
      if (isPerez) fromSkyWm2 = Math.max(0, fromSkyWm2 + horizonWm2[cell]! * horizonShare[i]!);
      const diffuseWm2 = fromSkyWm2 + ghi * groundShare;
      const meanShare = plannedMeanShare + far * more[crownAt + MEAN_SHARE]!;
      const planeWm2 = beamWm2 * meanShare + diffuseWm2;
      const glassBeamWm2 = beamWm2 * incidenceShare;
      const cellC = sky[from + AIR_C]! + planeWm2 * heatKPerWm2;
      const warmVmpV = vmpV + vmpVPerK * (cellC - RATED_TEMP_C);
      // Equal light over fewer sections gives less, so ties are passed over.
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
        const litWm2 = mildShade ? mildlyLitWm2(evenWm2, glassBeamWm2 * meanShare + diffuseWm2) : evenWm2;
        const litA = litWm2 * ratedAPerWm2;
        const powerW = litA * (sectionsV - litA * trackedOhm);
        if (powerW > bestW) {
          bestW = powerW;
          bestV = sectionsV;
          bestA = litA;
          bestK = k;
        }
      }
      const givenW = bestW * (passedShare * ofMember[lane * MEMBER_SLOTS + MEMBER_YIELD]!);
      if (mayFix && givenW <= mostW && (bestV >= leastV || bestK === 0)) {
        sumW[cell]! += outShare * givenW;
        if (!asksAll) continue;
      } else hanging[cell]! |= 1 << g;
      const to = cell * PLANE_SLOTS;
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
}

/** A plane without light: its cells are as warm as the air. */
function writeDark(plane: Float64Array, cell: number, sky: Float64Array): void {
  const to = cell * PLANE_SLOTS;
  plane.fill(0, to, to + PLANE_SLOTS);
  plane[to + CELL_C] = sky[cell * DOME_LIGHT_SLOTS + AIR_C]!;
}
