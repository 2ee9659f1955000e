import { AIR_C, DOME_LIGHT_SLOTS, type DomeLight, EVEN_WM2, GHI_WM2, SUN_WM2 } from "./domeLight.ts";
import { type FixedPower, MEMBER_CROWNS, MEMBER_SLOTS, MEMBER_YIELD } from "./fixedPower.ts";
import { mildlyLitWm2 } from "./mildlyLitWm2.ts";
import { noteChoice, noteDark, noteLight, PLANE_SLOTS } from "./planeSlots.ts";
import { crownsAt, type PreparedGroup, RATED_TEMP_C } from "./preparedGroup.ts";
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

/** `stepPlane` for the steps in which some of the beam is taken: it looks for the best number of conducting sections. */
export function stepShadedPlane(
  group: PreparedGroup,
  g: number,
  light: DomeLight,
  lanes: number,
  plane: Float64Array,
  fixed: FixedPower,
  noteAll: boolean,
): void {
  const { perStep, stride, crownStride, crowns, horizonPerSky } = group;
  const { sections, perSection, bypassV, vmpV, vmpVPerK, ratedAPerWm2, trackedOhm, passedShare } = group;
  const { sumW, coupled, ofMember } = fixed;
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
    const first = at + SECTION_SHARE - 1;
    for (let lane = 0, cell = i; lane < lanes; lane++, cell += steps) {
      const from = cell * DOME_LIGHT_SLOTS;
      const ghi = sky[from + GHI_WM2]!;
      if (ghi <= 0) {
        if (asksAll) noteDark(plane, cell * PLANE_SLOTS, sky[from + AIR_C]!);
        continue;
      }
      // Crowns between those planned and the darkest or the lightest, as `underCrowns` has them.
      const lean = ofMember[lane * MEMBER_SLOTS + MEMBER_CROWNS]!;
      const far = lean < 0 ? -lean : lean;
      const crownAt = crownsAt(crownStride, i, lean);
      const firstMore = crownAt + SECTION_SHARE - 1;
      const beamWm2 = sky[from + SUN_WM2]! * cosIncidence;
      let skyWm2 = sky[from + EVEN_WM2]!;
      if (isPerez) skyWm2 = Math.max(0, skyWm2 + horizonWm2[cell]! * horizonPerSky[i]!);
      const skyShare = plannedSkyShare + far * crowns[crownAt + SKY_SHARE]!;
      const diffuseWm2 = skyWm2 * skyShare + ghi * groundShare;
      const meanShare = plannedMeanShare + far * crowns[crownAt + MEAN_SHARE]!;
      const planeWm2 = beamWm2 * meanShare + diffuseWm2;
      const glassBeamWm2 = beamWm2 * incidenceShare;
      const cellC = sky[from + AIR_C]! + planeWm2 * heatKPerWm2;
      const warmVmpV = vmpV + vmpVPerK * (cellC - RATED_TEMP_C);
      // Equal light over fewer sections gives less, so ties are passed over.
      const brightestShare = perStep[first + 1]! + far * crowns[firstMore + 1]!;
      let share = -1;
      let bestW = 0;
      let bestV = 0;
      let bestA = 0;
      let bestK = 0;
      for (let k = sections; k > 0 && share !== brightestShare; k--) {
        const thisShare = perStep[first + k]! + far * crowns[firstMore + k]!;
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
      } else coupled[cell]! |= 1 << g;
      const to = cell * PLANE_SLOTS;
      noteChoice(plane, to, bestW, bestV, bestA, bestK);
      noteLight(plane, to, glassBeamWm2, diffuseWm2, planeWm2, cellC);
    }
  }
}
