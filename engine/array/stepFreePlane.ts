import { AIR_C, DOME_LIGHT_SLOTS, type DomeLight, EVEN_WM2, GHI_WM2, SUN_WM2 } from "./domeLight.ts";
import { type FixedPower, MEMBER_CROWNS, MEMBER_SLOTS, MEMBER_YIELD } from "./fixedPower.ts";
import { noteChoice, noteDark, noteLight, PLANE_SLOTS } from "./planeSlots.ts";
import { type PreparedGroup, RATED_TEMP_C } from "./preparedGroup.ts";
import {
  BEAM_IS_FREE,
  COS_INCIDENCE,
  GROUND_SHARE,
  HEAT_K_PER_WM2,
  INCIDENCE_SHARE,
  OUT_SHARE,
  SKY_SHARE,
} from "./slots.ts";

/** `stepPlane` for the steps in which nothing stands between sun and modules, and for those without light: all sections conduct. */
export function stepFreePlane(
  group: PreparedGroup,
  g: number,
  light: DomeLight,
  lanes: number,
  plane: Float64Array,
  fixed: FixedPower,
  noteAll: boolean,
): void {
  const { perStep, stride, crownStride, crowns, horizonPerSky } = group;
  const { sections, vmpV, vmpVPerK, ratedAPerWm2, trackedOhm, passedShare } = group;
  const { sumW, coupled, ofMember } = fixed;
  const { rows: sky, horizonWm2 } = light;
  // Compared with true: see "Fast loops" in DEVELOPERS.md.
  const asksAll = noteAll === true;
  const mayFix = (group.controllerAtBank && !group.isPwm) === true;
  const isPerez = group.dome.transposition === "perez";
  const leastV = fixed.highestV + group.headroomV;
  const mostW = group.maxChargeA * fixed.lowestV;
  const steps = perStep.length / stride;
  for (let i = 0, at = 0; i < steps; i++, at += stride) {
    const outShare = perStep[at + OUT_SHARE]!;
    if (outShare <= 0) {
      if (asksAll)
        for (let lane = 0, cell = i; lane < lanes; lane++, cell += steps)
          noteDark(plane, cell * PLANE_SLOTS, sky[cell * DOME_LIGHT_SLOTS + AIR_C]!);
      continue;
    }
    if (perStep[at + BEAM_IS_FREE]! === 0) continue;
    const cosIncidence = perStep[at + COS_INCIDENCE]!;
    const groundShare = perStep[at + GROUND_SHARE]!;
    const incidenceShare = perStep[at + INCIDENCE_SHARE]!;
    const heatKPerWm2 = perStep[at + HEAT_K_PER_WM2]!;
    const plannedSkyShare = perStep[at + SKY_SHARE]!;
    const moreSkyDarker = crowns[2 * i * crownStride]!;
    const moreSkyLighter = crowns[(2 * i + 1) * crownStride]!;
    for (let lane = 0, cell = i; lane < lanes; lane++, cell += steps) {
      const from = cell * DOME_LIGHT_SLOTS;
      const ghi = sky[from + GHI_WM2]!;
      if (ghi <= 0) {
        if (asksAll) noteDark(plane, cell * PLANE_SLOTS, sky[from + AIR_C]!);
        continue;
      }
      const lean = ofMember[lane * MEMBER_SLOTS + MEMBER_CROWNS]!;
      const skyShare = plannedSkyShare + (lean < 0 ? -lean * moreSkyDarker : lean * moreSkyLighter);
      const beamWm2 = sky[from + SUN_WM2]! * cosIncidence;
      let skyWm2 = sky[from + EVEN_WM2]!;
      // A dark horizon may take all of the even sky's light, but no more.
      if (isPerez) skyWm2 = Math.max(0, skyWm2 + horizonWm2[cell]! * horizonPerSky[i]!);
      const diffuseWm2 = skyWm2 * skyShare + ghi * groundShare;
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
      } else coupled[cell]! |= 1 << g;
      const to = cell * PLANE_SLOTS;
      if (bestW > 0) noteChoice(plane, to, bestW, bestV, bestA, sections);
      else noteChoice(plane, to, 0, 0, 0, 0);
      noteLight(plane, to, glassBeamWm2, diffuseWm2, planeWm2, cellC);
    }
  }
}
