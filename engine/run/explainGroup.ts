import { DOME_LIGHT_SLOTS, EVEN_WM2, makeDomeLight, SUN_WM2 } from "../array/domeLight.ts";
import { mildlyLitWm2 } from "../array/mildlyLitWm2.ts";
import { type PreparedGroup, RATED_TEMP_C, underCrowns } from "../array/preparedGroup.ts";
import { DOME_SLOTS, PER_LEVEL } from "../array/skyDome.ts";
import {
  COS_INCIDENCE,
  GROUND_SHARE,
  HEAT_K_PER_WM2,
  INCIDENCE_SHARE,
  MEAN_SHARE,
  OUT_SHARE,
  SECTION_SHARE,
  SKY_SHARE,
} from "../array/slots.ts";
import { stepDome } from "../array/stepDome.ts";
import { PASSED_V } from "../array/stepGroup.ts";
import { type ExplainedNumber, explained } from "./explained.ts";
import { crownLean, FIGURE_YIELD_SHARE } from "./memberFigures.ts";
import type { Prepared } from "./prepare.ts";
import type { RunResult } from "./runResult.ts";

/** All that happened to one panel group in step `i`, from the sky to the bank, each number with what it is made of. */
export function explainGroup(trace: RunResult, g: number, i: number): ExplainedNumber[] {
  const { prepared, record, details } = trace;
  const group = prepared.groups[g]!;
  const detail = details[g]!;
  const yieldShare = prepared.inputs.figures[FIGURE_YIELD_SHARE]!;
  const outShare = group.perStep[i * group.stride + OUT_SHARE]!;
  const offeredW = record.groupW[g * prepared.grid.steps + i]!;
  const setOut = explained(
    "set out",
    outShare,
    "",
    "share of the step, 0 with the sun down; light, volts and current below are those while it is out",
  );
  if (outShare <= 0 || prepared.light.ghiWm2[i]! <= 0) {
    return [setOut, explained("offered to the bank", offeredW, "W", "no light on it")];
  }
  return [
    setOut,
    ...light(trace, g, i),
    ...sections(trace, g, i),
    ...(yieldShare === 1
      ? []
      : [explained("yield of this member", yieldShare, "", "what its panels give over what was planned")]),
    explained(
      "DC power",
      detail.dcW[i]!,
      "W",
      `set out × panel voltage × panel current${yieldShare === 1 ? "" : " × yield of this member"}`,
    ),
    explained("stated losses", detail.lossesW[i]!, "W", `DC power × (1 − ${figure(group.keptShare)})`),
    ...wiring(trace, g, i),
    explained("held back by its limit", detail.limitedW[i]!, "W", limit(group)),
    explained(
      "offered to the bank",
      offeredW,
      "W",
      "DC power − stated losses − cable − controller − held back by its limit",
    ),
    explained(
      "taken by shade",
      detail.shadeLossW[i]!,
      "W",
      group.unshaded === null
        ? "nothing stands about"
        : "what the same chain gives with every share of the beam 1 and all of the sky seen, less offered to the bank",
    ),
  ];
}

/** What the run's own crowns make of a value on which they have a say. */
function shadeAt({ inputs }: Prepared, group: PreparedGroup, i: number, slot: number): number {
  return underCrowns(group, i, slot, crownLean(inputs.figures));
}

/** Light on a group's plane by where it comes from, before shade and glass take of the beam; as `stepDome` and `stepPlane` have it. */
function partsOfLight({ prepared }: RunResult, g: number, i: number) {
  const group = prepared.groups[g]!;
  const { perStep, stride, dome } = group;
  const at = i * stride;
  const sorted = makeDomeLight(dome.transposition, prepared.grid.steps, 1);
  stepDome(dome, prepared.light, prepared.airTempC, sorted, 0);
  const evenWm2 = sorted.rows[i * DOME_LIGHT_SLOTS + EVEN_WM2]!;
  const dhiWm2 = prepared.light.dhiWm2[i]!;
  const skyShare = shadeAt(prepared, group, i, SKY_SHARE);
  const fromHorizonWm2 =
    dome.transposition === "perez" ? skyShare * Math.max(sorted.horizonWm2[i]! * group.horizonPerSky[i]!, -evenWm2) : 0;
  return {
    sunShare: dhiWm2 > 0 ? 1 - evenWm2 / dhiWm2 : 0,
    skyShare,
    horizonShare: dhiWm2 > 0 ? fromHorizonWm2 / dhiWm2 : 0,
    beamWm2: sorted.rows[i * DOME_LIGHT_SLOTS + SUN_WM2]! * perStep[at + COS_INCIDENCE]!,
    skyWm2: evenWm2 * skyShare + fromHorizonWm2,
    groundWm2: prepared.light.ghiWm2[i]! * perStep[at + GROUND_SHARE]!,
  };
}

function light(trace: RunResult, g: number, i: number): ExplainedNumber[] {
  const { prepared, details } = trace;
  const group = prepared.groups[g]!;
  const detail = details[g]!;
  const { perStep, stride, dome } = group;
  const at = i * stride;
  const { sunShare, skyShare, horizonShare, beamWm2, skyWm2, groundWm2 } = partsOfLight(trace, g, i);
  const outShare = perStep[at + OUT_SHARE]!;
  return [
    explained("cosine of the sun's angle on it", perStep[at + COS_INCIDENCE]!, "", "0 with the sun behind it"),
    explained(
      "part of the sky light from beside the sun",
      sunShare,
      "",
      dome.transposition === "hayDavies" ? "beam ÷ above the air (hayDavies)" : `looked up (${dome.transposition})`,
    ),
    explained(
      "what that part becomes on it",
      perStep[at + COS_INCIDENCE]! * dome.rows[i * DOME_SLOTS + PER_LEVEL]!,
      "",
      "cosine ÷ sine of the sun's elevation, held near the horizon",
    ),
    explained(
      "beam on it, no shade",
      beamWm2,
      "W/m²",
      "beam × cosine + sky light, level × part from beside the sun × what that part becomes",
    ),
    explained(
      "share of even sky light that falls on it",
      skyShare,
      "",
      group.unshaded === null
        ? "(1 + cos tilt) ÷ 2"
        : `obstacles taken off; ${figure(group.unshaded.perStep[at + SKY_SHARE]!)} without them, (1 + cos tilt) ÷ 2`,
    ),
    ...(horizonShare === 0 ? [] : [explained("horizon's band", horizonShare, "", "looked up (perez)")]),
    explained(
      "sky light on it",
      skyWm2,
      "W/m²",
      `sky light, level × ${horizonShare === 0 ? "" : "("}share of even sky light × (1 − part from beside the sun)${horizonShare === 0 ? "" : " + horizon's band)"}`,
    ),
    explained(
      "ground light on it",
      groundWm2,
      "W/m²",
      `this sky, level × ${figure(perStep[at + GROUND_SHARE]!)}, which is albedo × (1 − cos tilt) ÷ 2`,
    ),
    explained(
      "on the plane, no shade",
      detail.planeBeforeWm2[i]! / outShare,
      "W/m²",
      group.unshaded === null
        ? "beam on it + sky light on it + ground light on it"
        : "the same with all of the sky seen",
    ),
    explained(
      "share of the beam that gets past",
      shadeAt(prepared, group, i, MEAN_SHARE),
      "",
      "mean over the modules; 1 where nothing stands in the way",
    ),
    explained(
      "on the plane, after shade",
      detail.planeWm2[i]! / outShare,
      "W/m²",
      "beam on it × share that gets past + sky light on it + ground light on it",
    ),
    explained(
      "share of the beam through the glass",
      perStep[at + INCIDENCE_SHARE]!,
      "",
      prepared.scenario.models.incidence,
    ),
    explained(
      "behind the glass",
      detail.effectiveWm2[i]! / outShare,
      "W/m²",
      "beam on it × share that gets past × share through the glass + sky light on it + ground light on it",
    ),
    explained(
      "cells",
      detail.cellTempC[i]!,
      "°C",
      `air + on the plane, after shade × ${figure(perStep[at + HEAT_K_PER_WM2]!)}`,
    ),
  ];
}

function sections(trace: RunResult, g: number, i: number): ExplainedNumber[] {
  const { prepared, details } = trace;
  const group = prepared.groups[g]!;
  const detail = details[g]!;
  const at = i * group.stride;
  const k = detail.sectionsConducting[i]!;
  const conducting = explained(
    "sections conducting",
    k,
    `of ${group.sections}`,
    "in each string: the number that gives most",
  );
  if (k === 0) return [conducting];
  const { beamWm2, skyWm2, groundWm2 } = partsOfLight(trace, g, i);
  const glassBeamWm2 = beamWm2 * group.perStep[at + INCIDENCE_SHARE]!;
  const sectionShare = shadeAt(prepared, group, i, SECTION_SHARE + k - 1);
  const lit = [
    conducting,
    explained(
      "share of the beam on the darkest of them",
      sectionShare,
      "",
      `the ${ordinal(k)} brightest section, mean of the strings`,
    ),
    explained(
      "light of that section",
      glassBeamWm2 * sectionShare + skyWm2 + groundWm2,
      "W/m²",
      "beam on it × share through the glass × share on the darkest + sky light on it + ground light on it",
    ),
  ];
  if (group.mildShade && !group.isPwm) {
    const meanWm2 = glassBeamWm2 * shadeAt(prepared, group, i, MEAN_SHARE) + skyWm2 + groundWm2;
    lit.push(
      explained(
        "the same, raised for mild shade",
        mildlyLitWm2(lit[2]!.value, meanWm2),
        "W/m²",
        "× (1 + 0.3 u ÷ (0.2 + u)), u = 1 − light of that section ÷ behind the glass, 0 at least",
      ),
    );
  }
  return [...lit, ...(group.isPwm ? tiedToBank(trace, g, i, lit[2]!.value) : atPowerPoint(trace, g, i))];
}

/** A tracking controller runs the sections at their power point, or, where they stand too low for one that only steps down, past it. */
function atPowerPoint(trace: RunResult, g: number, i: number): ExplainedNumber[] {
  const group = trace.prepared.groups[g]!;
  const detail = trace.details[g]!;
  const k = detail.sectionsConducting[i]!;
  const warmK = detail.cellTempC[i]! - RATED_TEMP_C;
  const kneeV = k * group.perSection * (group.vmpV + group.vmpVPerK * warmK) - (group.sections - k) * group.bypassV;
  if (Math.abs(detail.mppV[i]! - kneeV) > 1e-9) return passedThrough(trace, g, i);
  return [
    warmVolts(group, warmK),
    explained(
      "panel voltage",
      detail.mppV[i]!,
      "V",
      `power point of a string × ${k} ÷ ${group.sections} − ${group.sections - k} × ${group.bypassV} V`,
    ),
    explained(
      "panel current",
      panelA(trace, g, i),
      "A",
      `${group.mildShade ? "the same, raised for mild shade" : "light of that section"} × ${figure(group.ratedAPerWm2 * 1000)} A ÷ 1000; all strings together`,
    ),
  ];
}

/** A controller that only steps down ties a low string to the bank. */
function passedThrough(trace: RunResult, g: number, i: number): ExplainedNumber[] {
  const group = trace.prepared.groups[g]!;
  const detail = trace.details[g]!;
  const k = detail.sectionsConducting[i]!;
  const dark = group.sections - k;
  const warmK = detail.cellTempC[i]! - RATED_TEMP_C;
  const part = `× ${k} ÷ ${group.sections} − ${dark} × ${group.bypassV} V`;
  return [
    warmVolts(group, warmK),
    openVolts(group, warmK),
    explained("bank as the controller sees it", detail.seenV[i]!, "V", "left by the step before"),
    explained("panel voltage", detail.mppV[i]!, "V", `bank as seen + ${PASSED_V} V: the controller passes through`),
    explained(
      "panel current",
      panelA(trace, g, i),
      "A",
      `light × ${figure(group.ratedAPerWm2 * 1000)} A ÷ 1000 × (1 − x²), x = (panel voltage − a) ÷ (b − a), 0 at least; a = power point ${part}, b = open volts ${part}`,
    ),
  ];
}

function openVolts(group: PreparedGroup, warmK: number): ExplainedNumber {
  return explained(
    "open volts of a string",
    group.vocV * (1 + group.vocTempCoeffPerK * warmK),
    "V",
    `${figure(group.vocV)} × (1 − ${figure(-group.vocTempCoeffPerK)} × (cells − ${RATED_TEMP_C}))`,
  );
}

function warmVolts(group: PreparedGroup, warmK: number): ExplainedNumber {
  const perK = group.vmpVPerK / group.vmpV;
  return explained(
    "power point of a string",
    group.vmpV + group.vmpVPerK * warmK,
    "V",
    `${figure(group.vmpV)} × (1 − ${figure(-perK)} × (cells − ${RATED_TEMP_C}))`,
  );
}

/** A PWM controller ties the panels to the bank: the current falls as 1 − x² between power point and open volts. */
function tiedToBank(trace: RunResult, g: number, i: number, litWm2: number): ExplainedNumber[] {
  const group = trace.prepared.groups[g]!;
  const detail = trace.details[g]!;
  const k = detail.sectionsConducting[i]!;
  const dark = group.sections - k;
  const warmK = detail.cellTempC[i]! - RATED_TEMP_C;
  const keptOhm = group.cableOhm * group.keptShare;
  const part = `× ${k} ÷ ${group.sections} − ${dark} × ${group.bypassV} V`;
  const litA = litWm2 * group.impAPerWm2;
  return [
    warmVolts(group, warmK),
    openVolts(group, warmK),
    explained("bank as the controller sees it", detail.seenV[i]!, "V", "left by the step before"),
    explained(
      "current of that light",
      litA,
      "A",
      `light of that section × ${figure(group.impAPerWm2 * 1000)} A ÷ 1000`,
    ),
    explained(
      "panel current",
      panelA(trace, g, i),
      "A",
      `current of that light × (1 − x²), x = (bank as seen + current of that light × ${figure(keptOhm)} Ω − a) ÷ (b − a), 0 at least; a = power point ${part}, b = open volts ${part}`,
    ),
    explained("panel voltage", detail.mppV[i]!, "V", `bank as seen + panel current × ${figure(keptOhm)} Ω`),
  ];
}

/** Current of all strings together, as planned; a member's yield comes on top. */
function panelA(trace: RunResult, g: number, i: number): number {
  const { prepared, details } = trace;
  const group = prepared.groups[g]!;
  const outShare = group.perStep[i * group.stride + OUT_SHARE]!;
  const yieldShare = prepared.inputs.figures[FIGURE_YIELD_SHARE]!;
  return details[g]!.dcW[i]! / (outShare * yieldShare * details[g]!.mppV[i]!);
}

/** Cable and controller, in the order in which the power meets them. */
function wiring(trace: RunResult, g: number, i: number): ExplainedNumber[] {
  const group = trace.prepared.groups[g]!;
  const detail = trace.details[g]!;
  const share = figure(group.efficiencyShare);
  if (group.controllerAtBank) {
    return [
      explained(
        "cable",
        detail.cableLossW[i]!,
        "W",
        `set out × (panel current × ${figure(group.keptShare)})² × ${figure(group.cableOhm)} Ω, out and back`,
      ),
      explained("controller", detail.controllerLossW[i]!, "W", `(DC power − stated losses − cable) × (1 − ${share})`),
    ];
  }
  return [
    explained("controller", detail.controllerLossW[i]!, "W", `(DC power − stated losses) × (1 − ${share})`),
    explained("bank as the controller sees it", detail.seenV[i]!, "V", "left by the step before"),
    explained(
      "cable",
      detail.cableLossW[i]!,
      "W",
      `set out × current² × ${figure(group.cableOhm)} Ω, the current being offered to the bank ÷ set out ÷ bank as seen`,
    ),
  ];
}

function limit(group: PreparedGroup): string {
  return group.maxChargeA === Number.POSITIVE_INFINITY
    ? "it has none"
    : `what is more than ${figure(group.maxChargeA)} A at the bank's volts`;
}

const figure = (value: number) => String(Number(value.toPrecision(5)));

const ordinal = (k: number) =>
  `${k}${["th", "st", "nd", "rd"][k % 10 < 4 && Math.floor(k / 10) % 10 !== 1 ? k % 10 : 0]}`;
