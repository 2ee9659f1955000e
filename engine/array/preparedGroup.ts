import { panelCableOf } from "../scenario/cable.ts";
import { lossesOf } from "../scenario/lossesOf.ts";
import type { Models } from "../scenario/models.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import { copperOhmPerM } from "./copperOhmPerM.ts";
import type { PreparedDome } from "./skyDome.ts";
import { SKY_SHARE } from "./slots.ts";

/** Cell temperature at which modules are rated, °C. */
export const RATED_TEMP_C = 25;
/** Light at which modules are rated, W/m². */
const RATED_WM2 = 1000;
/** Volts lost in a bypass diode that carries the current past a dark section (common practice, no source). */
const BYPASS_V = 0.5;
/**
 * Volts by which the panel must stand above the bank before a controller that only steps down can track it (common
 * practice, no source; makers' manuals name 1 V in running, more to start).
 */
const STEP_DOWN_HEADROOM_V = 1;

/** A panel group ready to be stepped: everything that the weather of a member does not change. */
export interface PreparedGroup {
  readonly id: string;
  /** The dome that it was prepared under, the same for all groups of a scenario: the light that falls on it is to be sorted by this one. */
  readonly dome: PreparedDome;
  /** `stride` values for each step, in the places that `slots.ts` names; rounded by `toGrid`. */
  readonly perStep: Float64Array;
  readonly stride: number;
  /**
   * How much more each value from `SKY_SHARE` on becomes under the darkest crowns that an ensemble may draw, then under the lightest: twice
   * `crownStride` values for each step, 0 where no crown lets light through.
   */
  readonly crowns: Float64Array;
  readonly crownStride: number;
  /** From `horizonPerSky`, one value per step when the transposition is Perez's; else empty. */
  readonly horizonPerSky: Float64Array;
  /** Bypass sections in series in one string; 1 when the group is wired for even output. */
  readonly sections: number;
  readonly perSection: number;
  /** Of one string: volts at the power point and open, at 25 °C. */
  readonly vmpV: number;
  readonly vocV: number;
  /** Rated power ÷ vmpV, for each W/m²: gives the rated power at rated light even where a sheet rounds its current. */
  readonly ratedAPerWm2: number;
  /** Current of all strings at the power point, for each W/m². */
  readonly impAPerWm2: number;
  /** Change of the power point's voltage with temperature, V/K: all of the power's, since current hardly moves. */
  readonly vmpVPerK: number;
  readonly vocTempCoeffPerK: number;
  /** Drop over the diode of a bypassed section. */
  readonly bypassV: number;
  /** Share of the power that the losses leave. */
  readonly keptShare: number;
  readonly mildShade: boolean;
  readonly isPwm: boolean;
  /** Whether the cable carries panel volts; so it is with PWM, at whichever end of the cable the controller sits. */
  readonly controllerAtBank: boolean;
  /** Out and back, Ω. */
  readonly cableOhm: number;
  /** What of it lies between the panels and a tracking controller, for current before the losses, Ω. */
  readonly trackedOhm: number;
  readonly efficiencyShare: number;
  /** Share of the power that losses and controller pass on: `keptShare × efficiencyShare`. */
  readonly passedShare: number;
  /** A; Infinity when the controller has no limit. */
  readonly maxChargeA: number;
  /** Volts above the bank that a string must reach to be used; −Infinity for a controller that can also step up. */
  readonly headroomV: number;
  /** The same group with nothing standing about; null when nothing does. */
  readonly unshaded: PreparedGroup | null;
}

/**
 * Where `PreparedGroup.crowns` has what belongs to a step's `SKY_SHARE`, less that slot: so that slots count alike in both.
 * @memberLoop
 */
export function crownsAt(crownStride: number, i: number, lean: number): number {
  return (lean < 0 ? 2 * i : 2 * i + 1) * crownStride - SKY_SHARE;
}

/**
 * A value on which crowns have a say, under crowns that are so much lighter or darker than planned. `stepPlane` does the same where it stands.
 * @param slot `SKY_SHARE` or a later one
 * @param lean −1 (the darkest crowns) … 0 (as planned) … 1 (the lightest)
 */
export function underCrowns(group: PreparedGroup, i: number, slot: number, lean: number): number {
  const crownAt = crownsAt(group.crownStride, i, lean);
  return group.perStep[i * group.stride + slot]! + Math.abs(lean) * group.crowns[crownAt + slot]!;
}

/** What the sun's way and what stands about make of a group: the parts of a `PreparedGroup` that are worked out step by step. */
export type GroupLight = Pick<
  PreparedGroup,
  "dome" | "perStep" | "stride" | "crowns" | "crownStride" | "horizonPerSky" | "sections" | "unshaded"
>;

/**
 * Puts a prepared group together: its wiring, which follows from the scenario, with its light. The only place that makes one, so that all have the one
 * shape in memory that the step loop is compiled for: two shapes would cost the loop a third of its speed. `tests/promise/oneShape.test.ts` compares
 * the shapes.
 */
export function preparedGroup(group: PanelGroup, { sectionRule }: Models, light: GroupLight): PreparedGroup {
  const { module, controller } = group;
  const cable = panelCableOf(controller);
  const vmpV = module.vmpV * group.inSeries;
  const keptShare = lossesOf(group).reduce((kept, loss) => kept * (1 - loss.share), 1);
  const cableOhm = 2 * cable.oneWayM * copperOhmPerM(cable, cable.tempC);
  const controllerAtBank = controller.at === "bank" || controller.kind === "pwm";
  return {
    id: group.id,
    dome: light.dome,
    perStep: light.perStep,
    stride: light.stride,
    crowns: light.crowns,
    crownStride: light.crownStride,
    horizonPerSky: light.horizonPerSky,
    sections: light.sections,
    perSection: 1 / light.sections,
    vmpV,
    vocV: module.vocV * group.inSeries,
    ratedAPerWm2: (module.ratedW * group.count) / vmpV / RATED_WM2,
    impAPerWm2: (module.impA * (group.count / group.inSeries)) / RATED_WM2,
    vmpVPerK: vmpV * module.powerTempCoeffPerK,
    vocTempCoeffPerK: module.vocTempCoeffPerK,
    bypassV: BYPASS_V,
    keptShare,
    mildShade: sectionRule === "mildShade",
    isPwm: controller.kind === "pwm",
    controllerAtBank,
    cableOhm,
    trackedOhm: controllerAtBank ? cableOhm * keptShare : 0,
    efficiencyShare: controller.efficiencyShare,
    passedShare: keptShare * controller.efficiencyShare,
    maxChargeA: controller.maxChargeA ?? Number.POSITIVE_INFINITY,
    headroomV: controller.stepDownOnly ? STEP_DOWN_HEADROOM_V : Number.NEGATIVE_INFINITY,
    unshaded: light.unshaded,
  };
}
