import type { SkyLight } from "../sky/splitDiffuse.ts";
import type { GroupDetail } from "./groupDetail.ts";
import type { PreparedGroup } from "./prepareGroup.ts";
import { MILD_SHADE_HALF, MILD_SHADE_MOST } from "./sectionRule.ts";
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
const RATED_TEMP_C = 25;
/** Keeps a data sheet whose power point rises over its open voltage in the cold from dividing by nothing. */
const LEAST_SPAN_V = 0.1;

/**
 * Power that a panel group brings to the bank's terminals in step `i`, W, mean over the step.
 *
 * *Sections.* With k of a string's N sections conducting, the current is that of the k-th brightest and the voltage that
 * of k sections less the drop of N − k bypass diodes; the best k wins. This is cautious in mild shade
 * (one cell of 36 at three quarters of its light: 0.75 here, 0.87 real); see `SectionRule` for the other. The power
 * point's voltage follows temperature and not light: in dim light real modules run a little lower.
 *
 * *MPPT* runs the sections at their power point and takes the k that brings most through the cable to it; one that only
 * steps down needs them to stand far enough above the bank.
 * *PWM* ties them to the bank: the current is the power point's up to that voltage, then falls as 1 − x² to nothing at
 * the sections' open voltage (single-diode cells: within 0.03; below the power point they give up to 0.07 more). The
 * string stands above the bank by the drop in the cable, taken at the current without it: one step of correction, on the
 * cautious side.
 *
 * One function and not five, and numbers handed over in arrays: those given to or returned by a function that the
 * engine does not inline are boxed, and that doubled the time of a step.
 * @param light the sky of a member; one value per step
 * @param airTempC one value per step
 * @param volts holds the volts at the bank's terminals, above 0, at `voltsAt`
 * @param out receives the power, W, 0 or more, at `outAt`
 * @param detail receives what happened on the way; leave it out in ensembles
 * @see A. Dobos, PVWatts Version 5 Manual, NREL/TP-6A20-62641, 2014 (power of a module by light and temperature)
 */
export function stepGroup(
  group: PreparedGroup,
  i: number,
  light: SkyLight,
  airTempC: Float64Array,
  volts: Float64Array,
  voltsAt: number,
  out: Float64Array,
  outAt: number,
  detail?: GroupDetail,
): void {
  const { perStep, sections } = group;
  const busV = volts[voltsAt]!;
  const at = i * group.stride;
  const ghiWm2 = light.ghiWm2[i]!;
  const outShare = perStep[at + OUT_SHARE]!;
  if (ghiWm2 <= 0 || outShare <= 0) {
    if (detail !== undefined) writeNothing(detail, i, airTempC);
    out[outAt] = 0;
    return;
  }

  // Light on the plane: what comes from the sun's direction, which shade and glass treat alike, and the rest.
  const dniWm2 = light.dniWm2[i]!;
  const dhiWm2 = light.dhiWm2[i]!;
  let sunShare = 0;
  let horizonShare = 0;
  if (group.transposition === "hayDavies") {
    sunShare = Math.min(1, dniWm2 * 0.001 * perStep[at + PER_EXTRATERRESTRIAL]!);
  } else if (group.transposition === "perez" && dhiWm2 > 0) {
    sunShare = perezSunShare(group.perez, i, dniWm2, dhiWm2);
    // A dark horizon may take all of the even sky's light, but no more.
    horizonShare = Math.max(
      perezHorizonShare(group.perez, i, dniWm2, dhiWm2),
      (sunShare - 1) * perStep[at + SKY_SHARE]!,
    );
  }
  const beamWm2 = dniWm2 * perStep[at + COS_INCIDENCE]! + dhiWm2 * perStep[at + BEAM_RATIO]! * sunShare;
  const diffuseWm2 =
    dhiWm2 * (perStep[at + SKY_SHARE]! * (1 - sunShare) + horizonShare) + ghiWm2 * perStep[at + GROUND_SHARE]!;
  const planeWm2 = beamWm2 * perStep[at + MEAN_SHARE]! + diffuseWm2;
  const glassBeamWm2 = beamWm2 * perStep[at + INCIDENCE_SHARE]!;
  const cellTempC = airTempC[i]! + planeWm2 * perStep[at + HEAT_K_PER_WM2]!;
  const warmK = cellTempC - RATED_TEMP_C;

  // The best number of conducting sections. Equal light over fewer sections gives less, so ties are passed over.
  const { perSection, bypassV } = group;
  const warmVmpV = group.vmpV + group.vmpVPerK * warmK;
  const first = at + SECTION_SHARE - 1;
  const brightestShare = perStep[first + 1]!;
  let share = -1;
  let conducting = 0;
  let stringA = 0;
  let stringV = 0;
  // What the best choice brings to the far end of the tracked cable, before the losses.
  let best = 0;
  if (group.isPwm) {
    const warmVocV = group.vocV * (1 + group.vocTempCoeffPerK * warmK);
    for (let k = sections; k > 0 && share !== brightestShare; k--) {
      if (perStep[first + k] === share) continue;
      share = perStep[first + k]!;
      const litA = (glassBeamWm2 * share + diffuseWm2) * group.impAPerWm2;
      const atV = busV + litA * group.keptShare * group.cableOhm;
      const droppedV = (sections - k) * bypassV;
      const kneeV = k * perSection * warmVmpV - droppedV;
      const openV = k * perSection * warmVocV - droppedV;
      const past = Math.max(0, (atV - kneeV) / Math.max(LEAST_SPAN_V, openV - kneeV));
      const currentA = litA * Math.max(0, 1 - past * past);
      if (currentA > stringA) {
        stringA = currentA;
        conducting = k;
      }
    }
    best = stringA * busV;
    if (conducting > 0) stringV = busV + stringA * group.keptShare * group.cableOhm;
  } else {
    const leastV = busV + group.headroomV;
    for (let k = sections; k > 0 && share !== brightestShare; k--) {
      if (perStep[first + k] === share) continue;
      share = perStep[first + k]!;
      const sectionsV = k * perSection * warmVmpV - (sections - k) * bypassV;
      if (sectionsV < leastV) break; // fewer sections stand lower still
      let litWm2 = glassBeamWm2 * share + diffuseWm2;
      if (group.mildShade) {
        const meanWm2 = glassBeamWm2 * perStep[at + MEAN_SHARE]! + diffuseWm2;
        const under = meanWm2 > 0 ? Math.max(0, 1 - litWm2 / meanWm2) : 0;
        litWm2 *= 1 + (MILD_SHADE_MOST * under) / (MILD_SHADE_HALF + under);
      }
      const litA = litWm2 * group.ratedAPerWm2;
      const powerW = litA * (sectionsV - litA * group.trackedOhm);
      if (powerW > best) {
        best = powerW;
        stringA = litA;
        stringV = sectionsV;
        conducting = k;
      }
    }
  }

  const givenW = best * group.passedShare;
  let busW = 0;
  let busA = 0;
  if (group.controllerAtBank) {
    busW = Math.min(givenW, group.maxChargeA * busV);
  } else {
    // The cable's end at the bank is held at busV: I (busV + I R) = givenW, solved for I.
    busA = Math.min((2 * givenW) / (busV + Math.sqrt(busV * busV + 4 * givenW * group.cableOhm)), group.maxChargeA);
    busW = busA * busV;
  }
  if (detail !== undefined) {
    // The same chain with nothing standing about writes into the same places, and is written over.
    let freeW = outShare * busW;
    let planeBeforeWm2 = outShare * planeWm2;
    if (group.unshaded !== null) {
      stepGroup(group.unshaded, i, light, airTempC, volts, voltsAt, out, outAt, detail);
      freeW = out[outAt]!;
      planeBeforeWm2 = detail.planeWm2[i]!;
    }
    // Losses, cable, controller, in the order in which the power meets them.
    const dcW = stringA * stringV;
    const keptA = stringA * group.keptShare;
    const keptW = keptA * stringV;
    const cableA = group.controllerAtBank ? keptA : busA;
    const cableLossW = cableA * cableA * group.cableOhm;
    const intoControllerW = group.controllerAtBank ? keptW - cableLossW : keptW;
    const deliveredW = group.controllerAtBank ? busW : busW + cableLossW;
    detail.planeBeforeWm2[i] = planeBeforeWm2;
    detail.planeWm2[i] = outShare * planeWm2;
    detail.effectiveWm2[i] = outShare * (glassBeamWm2 * perStep[at + MEAN_SHARE]! + diffuseWm2);
    detail.cellTempC[i] = cellTempC;
    detail.sectionsConducting[i] = conducting;
    detail.mppV[i] = stringV;
    detail.dcW[i] = outShare * dcW;
    detail.lossesW[i] = outShare * (dcW - keptW);
    detail.cableLossW[i] = outShare * cableLossW;
    detail.controllerLossW[i] = outShare * (intoControllerW - givenW);
    detail.limitedW[i] = outShare * Math.max(0, givenW - deliveredW);
    detail.busW[i] = outShare * busW;
    detail.shadeLossW[i] = freeW - outShare * busW;
  }
  out[outAt] = outShare * busW;
}

function writeNothing(detail: GroupDetail, i: number, airTempC: Float64Array): void {
  detail.planeBeforeWm2[i] = 0;
  detail.planeWm2[i] = 0;
  detail.effectiveWm2[i] = 0;
  detail.cellTempC[i] = airTempC[i]!;
  detail.sectionsConducting[i] = 0;
  detail.mppV[i] = 0;
  detail.dcW[i] = 0;
  detail.lossesW[i] = 0;
  detail.cableLossW[i] = 0;
  detail.controllerLossW[i] = 0;
  detail.limitedW[i] = 0;
  detail.busW[i] = 0;
  detail.shadeLossW[i] = 0;
}
