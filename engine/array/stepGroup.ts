import { type FixedPower, MEMBER_CROWNS, MEMBER_SLOTS, MEMBER_YIELD } from "./fixedPower.ts";
import { mildlyLitWm2 } from "./mildlyLitWm2.ts";
import { BEST_K, BEST_V, BEST_W, CELL_C, DIFFUSE_WM2, GLASS_BEAM_WM2, noteChoice, PLANE_SLOTS } from "./planeSlots.ts";
import { crownsAt, type PreparedGroup, RATED_TEMP_C } from "./preparedGroup.ts";
import { MEAN_SHARE, OUT_SHARE, SECTION_SHARE } from "./slots.ts";

/** What a step-down controller that passes through takes of the volts (common practice, no source): switch and coil, some hundredths of an ohm. */
export const PASSED_V = 0.3;
/** Keeps a data sheet whose power point rises over its open voltage in the cold from dividing by nothing. */
const LEAST_SPAN_V = 0.1;

/**
 * Second half of a group's work: power that it brings to the bank's terminals in step `i`, W, mean over the step, now that
 * the bank's volts are known.
 *
 * *MPPT* runs the sections at their power point; one that only steps down needs them to stand far enough above the bank,
 * takes more sections at less current where the free choice does not, and where none does passes through: it ties the string to the bank's volts and
 * takes what current it has there.
 * *PWM* ties the panels to the bank: the current is the power point's up to that voltage, then falls as 1 − x² to nothing at
 * the sections' open voltage (single-diode cells: within 0.03; below the power point they give up to 0.07 more). The
 * string stands above the bank by the drop in the cable, taken at the current without it: one step of correction, on the
 * cautious side.
 *
 * Numbers are handed over in arrays: those given to or returned by a function that the engine does not inline are boxed.
 * @param lane of the member, and `cell` the place of its step `i`: lane × steps + i
 * @param plane from `stepPlane`; where the volts decide, the choice of sections in it is written over
 * @param volts holds the volts at the bank's terminals, above 0, at `voltsAt`
 * @param out receives the power, W, 0 or more, at `outAt`
 * @param fixed holds the yield and the crowns of the member
 */
export function stepGroup(
  group: PreparedGroup,
  i: number,
  lane: number,
  cell: number,
  plane: Float64Array,
  volts: Float64Array,
  voltsAt: number,
  out: Float64Array,
  outAt: number,
  fixed: FixedPower,
): void {
  const at = cell * PLANE_SLOTS;
  const busV = volts[voltsAt]!;
  if (group.isPwm) {
    if (plane[at + DIFFUSE_WM2]! + plane[at + GLASS_BEAM_WM2]! > 0)
      stepPwm(group, i, lane, cell, plane, volts, voltsAt, fixed);
  } else if (plane[at + BEST_K]! > 0 && plane[at + BEST_V]! < busV + group.headroomV) {
    stepLowVolts(group, i, lane, cell, plane, volts, voltsAt, fixed);
  }
  const givenW = plane[at + BEST_W]! * (group.passedShare * fixed.ofMember[lane * MEMBER_SLOTS + MEMBER_YIELD]!);
  const outShare = group.perStep[i * group.stride + OUT_SHARE]!;
  if (group.controllerAtBank) {
    out[outAt] = outShare * Math.min(givenW, group.maxChargeA * busV);
  } else {
    // The cable's end at the bank is held at busV: I (busV + I R) = givenW, solved for I.
    const freeA = (2 * givenW) / (busV + Math.sqrt(busV * busV + 4 * givenW * group.cableOhm));
    out[outAt] = outShare * Math.min(freeA, group.maxChargeA) * busV;
  }
}

/**
 * Looks for what a controller that only steps down gets where the free choice lies too low: sections that stand far enough above the bank at their
 * power point, or sections tied to the bank, with the current falling as 1 − x² past the power point to nothing at their open voltage.
 */
function stepLowVolts(
  group: PreparedGroup,
  i: number,
  lane: number,
  cell: number,
  plane: Float64Array,
  volts: Float64Array,
  voltsAt: number,
  { ofMember }: FixedPower,
): void {
  const { perStep, sections } = group;
  const at = cell * PLANE_SLOTS;
  const first = i * group.stride + SECTION_SHARE - 1;
  const lean = ofMember[lane * MEMBER_SLOTS + MEMBER_CROWNS]!;
  const far = Math.abs(lean);
  const { crowns } = group;
  const crownAt = crownsAt(group.crownStride, i, lean);
  const firstMore = crownAt + SECTION_SHARE - 1;
  const leastV = volts[voltsAt]! + group.headroomV;
  const passedV = volts[voltsAt]! + PASSED_V;
  const warmK = plane[at + CELL_C]! - RATED_TEMP_C;
  const warmVmpV = group.vmpV + group.vmpVPerK * warmK;
  const warmVocV = group.vocV * (1 + group.vocTempCoeffPerK * warmK);
  let bestW = 0;
  let bestV = 0;
  let bestA = 0;
  let bestK = 0;
  const glassBeamWm2 = plane[at + GLASS_BEAM_WM2]!;
  const diffuseWm2 = plane[at + DIFFUSE_WM2]!;
  const meanShare = perStep[i * group.stride + MEAN_SHARE]! + far * crowns[crownAt + MEAN_SHARE]!;
  const meanWm2 = glassBeamWm2 * meanShare + diffuseWm2;
  for (let k = sections; k > 0; k--) {
    const droppedV = (sections - k) * group.bypassV;
    const kneeV = k * group.perSection * warmVmpV - droppedV;
    const openV = k * group.perSection * warmVocV - droppedV;
    if (openV <= passedV) break; // fewer sections stand lower still
    const evenWm2 = glassBeamWm2 * (perStep[first + k]! + far * crowns[firstMore + k]!) + diffuseWm2;
    const litA = (group.mildShade ? mildlyLitWm2(evenWm2, meanWm2) : evenWm2) * group.ratedAPerWm2;
    const isTracked = kneeV >= leastV;
    const past = isTracked ? 0 : Math.max(0, (passedV - kneeV) / Math.max(LEAST_SPAN_V, openV - kneeV));
    const currentA = litA * Math.max(0, 1 - past * past);
    const sectionsV = isTracked ? kneeV : passedV;
    const powerW = currentA * (sectionsV - currentA * group.trackedOhm);
    if (powerW > bestW) {
      bestW = powerW;
      bestV = sectionsV;
      bestA = currentA;
      bestK = k;
    }
  }
  noteChoice(plane, at, bestW, bestV, bestA, bestK);
}

/** The sections that give the most current at the bank's volts, and that current. */
function stepPwm(
  group: PreparedGroup,
  i: number,
  lane: number,
  cell: number,
  plane: Float64Array,
  volts: Float64Array,
  voltsAt: number,
  { ofMember }: FixedPower,
): void {
  const { perStep, sections } = group;
  const at = cell * PLANE_SLOTS;
  const first = i * group.stride + SECTION_SHARE - 1;
  const lean = ofMember[lane * MEMBER_SLOTS + MEMBER_CROWNS]!;
  const far = Math.abs(lean);
  const { crowns } = group;
  const firstMore = crownsAt(group.crownStride, i, lean) + SECTION_SHARE - 1;
  const busV = volts[voltsAt]!;
  const warmK = plane[at + CELL_C]! - RATED_TEMP_C;
  const warmVmpV = group.vmpV + group.vmpVPerK * warmK;
  const warmVocV = group.vocV * (1 + group.vocTempCoeffPerK * warmK);
  const cableOhm = group.keptShare * group.cableOhm;
  let bestA = 0;
  let bestK = 0;
  for (let k = sections; k > 0; k--) {
    const share = perStep[first + k]! + far * crowns[firstMore + k]!;
    const litWm2 = plane[at + GLASS_BEAM_WM2]! * share + plane[at + DIFFUSE_WM2]!;
    const litA = litWm2 * group.impAPerWm2;
    const droppedV = (sections - k) * group.bypassV;
    const kneeV = k * group.perSection * warmVmpV - droppedV;
    const openV = k * group.perSection * warmVocV - droppedV;
    const past = Math.max(0, (busV + litA * cableOhm - kneeV) / Math.max(LEAST_SPAN_V, openV - kneeV));
    const currentA = litA * Math.max(0, 1 - past * past);
    if (currentA > bestA) {
      bestA = currentA;
      bestK = k;
    }
  }
  noteChoice(plane, at, bestA * busV, bestK > 0 ? busV + bestA * cableOhm : 0, bestA, bestK);
}
